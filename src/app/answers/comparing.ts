import type { AssumptionSet } from "../../assumptions/entry.js";
import { readAssumptions } from "../../assumptions/load.js";
import { balanceLine } from "../../report/board/balance-line.js";
import { differenceView } from "../../report/compared/difference-view.js";
import { differencesJson } from "../../report/compared/differences-json.js";
import { effectTable } from "../../report/compared/effect-view.js";
import { impliedTexts } from "../../report/document/check-rows.js";
import { type ComparedRun, comparedRun, explained, studyDifferences } from "../../study/compared/compared.js";
import { keptSchedules, type SchedulesOf } from "../../study/compared/kept-schedules.js";
import { resultDifferences } from "../../study/compared/result-differences.js";
import { triedWork } from "../../study/exports/orders/tried-work.js";
import { triedFile } from "../../study/exports/tried-file.js";
import { triedLog } from "../../study/exports/tried-log.js";
import { triedSamples } from "../../study/exports/tried-samples.js";
import { InputError } from "../../study/reading/problems.js";
import { parsedStudyText, readIssuedText, readStudyText } from "../../study/reading/read.js";
import { ownEffects } from "../../study/swept/own-effects.js";
import { sweep } from "../../study/swept/sweep.js";
import { impliedValues } from "../../study/traced/implied.js";
import type { AnswerContext, AnswersOf } from "./answer-context.js";
import { noticedIn } from "./noticed.js";
import type { BalanceState, ComparedPair, ComparedText, PrintedDifferences, StudyText } from "./questions.js";
import { runCache } from "./run-cache.js";

const mostComparisons = 8;
/** One for each study that is being edited: a run is not kept, since the next key makes another. */
const mostSchedules = 4;

/** What follows from the comparison alone, without the ranges of a report. */
export function comparing({
  assumptions,
}: AnswerContext): AnswersOf<
  | "balance"
  | "effect"
  | "ownEffects"
  | "differences"
  | "explanation"
  | "sweep"
  | "fileTried"
  | "logTried"
  | "samplesTried"
  | "workTried"
> {
  const runs = runCache(mostComparisons, ({ text, fileName, files }: ComparedText) =>
    comparedRun(
      files ? readIssuedText(text, fileName) : readStudyText(text, fileName),
      files ? readAssumptions(new Map(Object.entries(files))) : assumptions,
    ),
  );
  const schedules = keptSchedules(mostSchedules);
  const pairOf = ({ left, right }: ComparedPair) => {
    const pair = [runs(left), runs(right)] as const;
    return { pair, found: studyDifferences(...pair) };
  };
  return {
    balance: (asked) => balanceOf(asked, assumptions, schedules),
    effect: ({ before, text, fileName, names }) => {
      const [left, right] = [runs({ text: before, fileName }), runs({ text, fileName })];
      return effectTable(right, resultDifferences(left.comparison, right.comparison), names);
    },
    ownEffects: ({ text, fileName, values }) =>
      ownEffects(parsedStudyText(text, fileName), values, assumptions),
    differences: (asked) => {
      const { pair, found } = pairOf(asked);
      return printedDifferences(asked, pair, found);
    },
    explanation: async (asked) => {
      const { pair, found } = pairOf(asked);
      return printedDifferences(asked, pair, found, await explained(...pair, found));
    },
    fileTried: triedFile,
    logTried: triedLog,
    samplesTried: (trial) => triedSamples(trial, assumptions),
    workTried: triedWork,
    sweep: ({ text, fileName, values }) => sweep(parsedStudyText(text, fileName), values, assumptions),
  };
}

function printedDifferences(
  { names }: ComparedPair,
  pair: readonly [ComparedRun, ComparedRun],
  found: Parameters<typeof differenceView>[1],
  explanation?: Parameters<typeof differenceView>[2],
): PrintedDifferences {
  return {
    view: differenceView(pair, found, explanation, names),
    json: differencesJson(found, explanation),
  };
}

function balanceOf(
  { text, fileName }: StudyText,
  assumptions: AssumptionSet,
  schedules: SchedulesOf,
): BalanceState {
  try {
    const run = comparedRun(readStudyText(text, fileName), assumptions, schedules);
    const { confirmed, unusual } = noticedIn(run);
    return {
      line: balanceLine(run),
      used: run.usedAssumptions,
      implied: [
        ...impliedTexts({ ...run, implied: impliedValues(run.comparison) }),
        ...confirmed.map(({ at = [], found }) => ({ at, text: `Unusual, and confirmed: ${found}.` })),
      ],
      unusual,
    };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { subject: error.subject, problems: error.problems };
  }
}
