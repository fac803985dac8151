import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { MutantCoverage } from "@stryker-mutator/api/core";

/** What the tests took and touched without a mutant. */
export interface UnmutatedRun {
  /** Hits of each mutated place, by test. */
  readonly coverage: MutantCoverage;
  /** Milliseconds by test. */
  readonly times: Readonly<Record<string, number>>;
}

/** In the sandbox: a process that loops is ended, and the next one needs to know. */
const recordFile = "unmutated-run.json";

export const noRun: UnmutatedRun = { coverage: { static: {}, perTest: {} }, times: {} };

export const keepRun = (run: UnmutatedRun) => writeFileSync(recordFile, JSON.stringify(run));

export const keptRun = () =>
  existsSync(recordFile) ? (JSON.parse(readFileSync(recordFile, "utf8")) as UnmutatedRun) : noRun;

/** Ids of tests are the path of their file and their name. */
export const testId = (file: string, name: string) => `${file}#${name}`;
export const fileOf = (id: string) => id.slice(0, id.indexOf("#"));

/** What ran while a test file was loaded, kept under the file's name, is covered by each of its tests. */
export function shareLoading({ perTest }: MutantCoverage, file: string, ids: readonly string[]) {
  const loading = Object.entries(perTest[file] ?? {});
  delete perTest[file];
  for (const id of ids) {
    const own = perTest[id] ?? {};
    for (const [mutant, hits] of loading) own[mutant] = (own[mutant] ?? 0) + hits;
    perTest[id] = own;
  }
}

/** Times as long that a test file near the mutated module may take and still go before another. */
const patienceWith = { itsOwn: 16, sameFolder: 4 };

/** Files of the tests, the quickest first; those near the mutated module tell more, and may take longer. */
export function filesInOrder(ids: ReadonlySet<string>, mutated: string, times: UnmutatedRun["times"]) {
  const place = path
    .relative(process.cwd(), mutated)
    .replace(/^src\//, "tests/")
    .replace(/\.ts$/, "");
  const weight = (file: string) => {
    if (file.startsWith(place)) return 1 / patienceWith.itsOwn;
    return path.dirname(file) === path.dirname(place) ? 1 / patienceWith.sameFolder : 1;
  };
  const total = new Map<string, number>();
  for (const id of ids) {
    const file = fileOf(id);
    total.set(file, (total.get(file) ?? 0) + (times[id] ?? 0) * weight(file));
  }
  const files = [...total].sort(([, soon], [, late]) => soon - late);
  return files.map(([file]) => file);
}
