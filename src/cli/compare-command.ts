import { dirname } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import type { DrawingThreads } from "../odds/threads.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { parsedStudyFile, studyOf } from "../study/reading/read.js";
import type { Setting } from "../study/swept/settings.js";
import { runWithFutures, runWithOdds } from "./odds-command.js";

interface CompareArguments {
  /** Set for this once. */
  readonly settings: readonly Setting[];
  readonly asJson: boolean;
}

/** Prints the comparison, on average over all that is uncertain and at central values. What prints is loaded beside the draws. */
export async function compareCommand(
  path: string,
  { settings, asJson }: CompareArguments,
  print: (text: string) => void,
  threads: DrawingThreads,
): Promise<void> {
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const parsed = parsedStudyFile(path);
  const set = settings.length === 0 ? undefined : await import("./set-for-once.js");
  const document = set ? set.studyWith(parsed, settings, assumptions) : studyOf(parsed);
  if (asJson) {
    const { run, odds } = await runWithOdds(document, assumptions, { threads });
    const { resultsJson } = await import("../report/results/results.js");
    print(JSON.stringify(resultsJson(run, odds), undefined, 2));
    return;
  }
  const drawing = runWithFutures(document, assumptions, { threads });
  const [{ comparisonText }, { run, odds }] = await Promise.all([import("./comparison-text.js"), drawing]);
  print(comparisonText(run, odds));
  if (set) print(set.effectText(parsed, document, { settings, assumptions }));
}
