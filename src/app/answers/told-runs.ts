import type { ToldOdds } from "../../report/odds/odds-words.js";
import { toldOdds } from "../../report/odds/told-odds.js";
import { runStudy, type StudyRun } from "../../study/prepare/compute.js";
import { readStudyText } from "../../study/reading/read.js";
import type { Means } from "./means.js";
import type { StudyText, ToldText } from "./questions.js";
import { runCache } from "./run-cache.js";

interface ToldRun {
  readonly run: StudyRun;
  readonly told: ToldOdds | undefined;
}

/** Runs of studies with the odds that are told of them; the last are kept. */
export function toldRuns({ assumptions }: Means, mostKept: number): (asked: ToldText) => ToldRun {
  const runs = runCache(mostKept, ({ text, fileName }: StudyText) =>
    runStudy(readStudyText(text, fileName), assumptions),
  );
  return (asked) => {
    const run = runs(asked);
    return { run, told: asked.odds && toldOdds(run, asked.odds) };
  };
}
