import type { PrintedOdds } from "../../report/odds/odds-words.js";
import { printableOdds } from "../../report/odds/printed-odds.js";
import { runStudy, type StudyRun } from "../../study/prepare/compute.js";
import { readStudyText } from "../../study/reading/read.js";
import type { AnswerContext } from "./answer-context.js";
import type { StudyText, StudyTextWithOdds } from "./questions.js";
import { runCache } from "./run-cache.js";

interface ReportRun {
  readonly run: StudyRun;
  readonly printedOdds: PrintedOdds | undefined;
}

/** Runs of studies with the odds that are told of them; the last are kept. */
export function reportRuns(
  { assumptions }: AnswerContext,
  mostKept: number,
): (asked: StudyTextWithOdds) => ReportRun {
  const runs = runCache(mostKept, ({ text, fileName }: StudyText) =>
    runStudy(readStudyText(text, fileName), assumptions),
  );
  return (asked) => {
    const run = runs(asked);
    return { run, printedOdds: asked.odds && printableOdds(run, asked.odds) };
  };
}
