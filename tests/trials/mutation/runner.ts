import path from "node:path";
import { runInThisContext } from "node:vm";
import { INSTRUMENTER_CONSTANTS, type MutantCoverage, type StrykerOptions } from "@stryker-mutator/api/core";
import { commonTokens, declareClassPlugin, PluginKind, tokens } from "@stryker-mutator/api/plugin";
import {
  type DryRunResult,
  DryRunStatus,
  determineHitLimitReached,
  type FailedTestResult,
  type MutantRunOptions,
  type MutantRunResult,
  type TestResult,
  type TestRunner,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import type { CollectedTest } from "./collect.js";
import { openTestFiles, type QuickTests, type TestFiles } from "./test-files.js";
import { fileOf, filesInOrder, keepRun, keptRun, noRun, shareLoading, testId } from "./unmutated-run.js";

/** What the mutated code reads and writes, under a global name that both sides know. */
interface MutantState {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: MutantCoverage;
}

const state: MutantState = {};
Object.assign(globalThis, { [INSTRUMENTER_CONSTANTS.NAMESPACE]: state });

/** A test that meets the mutated place this many times as often as without the mutant is taken to loop for ever. */
const hitFactor = 100;
/** Likewise one that takes this much longer than without the mutant; generous, since machines are busy. */
const patience = { milliseconds: 10_000, factor: 20 };

const unmutatedMilliseconds = 600_000;

const finished = (result: TestResult | "looped") => {
  if (result === "looped")
    throw new Error("A test takes more than ten minutes without a mutant: leave it out.");
  return result;
};

/** Runs the quick tests for one mutant after another within one process. */
export class QuickTestRunner implements TestRunner {
  static inject = tokens(commonTokens.options);
  private readonly settings: QuickTests;
  private readonly loaded = new Set<string>();
  private files: TestFiles | undefined;
  private unmutated = noRun;

  constructor(options: StrykerOptions) {
    this.settings = options.quickTests as QuickTests;
  }

  /** Files are loaded anew for each mutant; what modules work out when first loaded stays that without a mutant. */
  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.files = await openTestFiles(process.cwd(), this.settings);
    this.unmutated = keptRun();
  }

  async dryRun(): Promise<DryRunResult> {
    const coverage: MutantCoverage = { static: {}, perTest: {} };
    state.mutantCoverage = coverage;
    const tests: TestResult[] = [];
    for (const file of this.opened().names) {
      await this.loadOnce(file);
      state.currentTestId = file;
      const collected = await this.opened().load(file);
      for (const test of collected) tests.push(finished(await resultOf(file, test, unmutatedMilliseconds)));
      const ids = collected.map(({ name }) => testId(file, name));
      shareLoading(coverage, file, ids);
    }
    const times = Object.fromEntries(tests.map((test) => [test.id, test.timeSpentMs]));
    this.unmutated = { coverage, times };
    keepRun(this.unmutated);
    return { status: DryRunStatus.Complete, tests, mutantCoverage: coverage };
  }

  async mutantRun(options: MutantRunOptions): Promise<MutantRunResult> {
    const wanted = new Set(options.testFilter ?? []);
    const tests: TestResult[] = [];
    let end = secondsOfProcessor() + this.settings.secondsPerMutant;
    const isOver = () => secondsOfProcessor() > end;
    for (const file of filesInOrder(wanted, options.sandboxFileName, this.unmutated.times)) {
      if (isOver()) break;
      end += await this.loadOnce(file);
      state.activeMutant = options.activeMutant.id;
      const outcome = await this.fileResults(file, wanted, isOver);
      state.activeMutant = undefined;
      if (outcome === "looped") return toMutantRunResult({ status: DryRunStatus.Timeout });
      tests.push(...outcome);
      if (tests.at(-1)?.status === TestStatus.Failed) break;
    }
    return toMutantRunResult({ status: DryRunStatus.Complete, tests });
  }

  async dispose() {
    await this.files?.close();
  }

  private opened() {
    if (this.files === undefined) throw new Error("The test runner was asked before it was ready.");
    return this.files;
  }

  /**
   * What modules work out when they are first loaded belongs to no test, and must not be that of a mutant; nor is the
   * time that it takes, in seconds of the processor.
   */
  private async loadOnce(file: string) {
    if (this.loaded.has(file)) return 0;
    const start = secondsOfProcessor();
    await this.opened().load(file);
    this.loaded.add(file);
    return secondsOfProcessor() - start;
  }

  /** Results of one file's tests, up to the first that fails or the end of the mutant's time. */
  private async fileResults(file: string, wanted: ReadonlySet<string>, isOver: () => boolean) {
    const ids = [...wanted].filter((id) => fileOf(id) === file);
    this.limitHits(ids);
    let collected: readonly CollectedTest[];
    try {
      collected = await this.opened().load(file);
    } catch (error) {
      return this.hasLooped() ? "looped" : [failed(commonOf(file, ids[0] ?? file, file, 0), String(error))];
    }
    const byId = new Map(collected.map((test) => [testId(file, test.name), test]));
    const results: TestResult[] = [];
    for (const id of this.inOrder(ids, [...byId.keys()])) {
      const test = byId.get(id);
      if (test === undefined) continue;
      if (isOver()) break;
      this.limitHits(wanted.has(id) ? [id] : ids);
      const longest = patience.milliseconds + patience.factor * Math.ceil(this.timeOf(id));
      const result = await resultOf(file, test, longest);
      if (result === "looped" || this.hasLooped()) return "looped";
      results.push(result);
      if (result.status === TestStatus.Failed) break;
    }
    return results;
  }

  /**
   * Those that meet the mutant, quickest first, and then the others of their file: what a file works out once is met by
   * the test that asks for it first, and may be judged by another.
   */
  private inOrder(meeting: readonly string[], all: readonly string[]) {
    const quickestFirst = (ids: readonly string[]) => ids.toSorted((a, b) => this.timeOf(a) - this.timeOf(b));
    const others = all.filter((id) => !meeting.includes(id));
    return [...quickestFirst(meeting), ...quickestFirst(others)];
  }

  private timeOf(id: string) {
    return this.unmutated.times[id] ?? 0;
  }

  private limitHits(ids: readonly string[]) {
    const { perTest } = this.unmutated.coverage;
    const hits = ids.map((id) => perTest[id]?.[state.activeMutant ?? ""] ?? 0);
    state.hitCount = 0;
    state.hitLimit = hitFactor * Math.max(1, ...hits);
  }

  private hasLooped() {
    return determineHitLimitReached(state.hitCount, state.hitLimit) !== undefined;
  }
}

const secondsOfProcessor = () => process.cpuUsage().user / 1e6;

async function resultOf(file: string, test: CollectedTest, milliseconds: number) {
  const id = testId(file, test.name);
  state.currentTestId = id;
  const start = performance.now();
  const failure = await failureOf(test, milliseconds);
  const common = commonOf(file, id, test.name, performance.now() - start);
  state.currentTestId = undefined;
  if (failure === "looped") return failure;
  return failure === undefined
    ? ({ ...common, status: TestStatus.Success } as const)
    : failed(common, failure.message);
}

/** The virtual machine alone can end a loop in this thread. */
async function failureOf(test: CollectedTest, timeout: number) {
  Object.assign(globalThis, { testUnderWay: test.run });
  try {
    await runInThisContext("testUnderWay()", { timeout });
    return undefined;
  } catch (error) {
    if (!(error instanceof Error)) return new Error(String(error));
    return "code" in error && error.code === "ERR_SCRIPT_EXECUTION_TIMEOUT" ? "looped" : error;
  }
}

const commonOf = (file: string, id: string, name: string, timeSpentMs: number) => ({
  id,
  name,
  fileName: path.resolve(file),
  timeSpentMs,
});

const failed = (common: ReturnType<typeof commonOf>, failureMessage: string) =>
  ({ ...common, status: TestStatus.Failed, failureMessage }) satisfies FailedTestResult;

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "quick-tests", QuickTestRunner)];

export const strykerValidationSchema = {
  properties: {
    quickTests: {
      type: "object",
      properties: {
        folders: { type: "array", items: { type: "string" } },
        leftOut: { type: "array", items: { type: "string" } },
        secondsPerMutant: { type: "number", exclusiveMinimum: 0 },
      },
      required: ["folders", "leftOut", "secondsPerMutant"],
    },
  },
};
