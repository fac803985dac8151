import type { AssumptionSet } from "../../assumptions/entry.js";
import { type AssumptionFiles, readAssumptions } from "../../assumptions/load.js";
import { formsOfPrints, formsToPrint, plainForms } from "../../forms/forms.js";
import { completedIssue, preparedIssue } from "../../issue/make-issue.js";
import { NotIssuedError, readIssue } from "../../issue/read-issue.js";
import { verifyIssue } from "../../issue/verify.js";
import { balanceLine } from "../../report/balance-line.js";
import { differenceView } from "../../report/difference-view.js";
import { differencesJson } from "../../report/differences-json.js";
import { effectTable } from "../../report/effect-view.js";
import { finishPdf } from "../../report/finished-pdf.js";
import { linkedAssets, renderPage, renderReport, renderReportBody } from "../../report/html.js";
import { printSettings } from "../../report/paper.js";
import { reportView } from "../../report/report-view.js";
import { resultsJson } from "../../report/results.js";
import { toldOdds } from "../../report/told-odds.js";
import { type ComparedRun, comparedRun, explained, studyDifferences } from "../../study/compared/compared.js";
import { runStudy, type StudyRun } from "../../study/compute.js";
import { InputError } from "../../study/problems.js";
import { readStudyText } from "../../study/read.js";
import type {
  Answer,
  Asked,
  BalanceState,
  ComparedPair,
  ComparedText,
  Kind,
  StudyText,
  ToldDifferences,
  ToldText,
} from "./questions.js";
import { runCache } from "./run-cache.js";

/** With what studies are computed. */
export interface Means {
  readonly assumptions: AssumptionSet;
  /** What they were read from. */
  readonly files: AssumptionFiles;
}

type Answers = {
  readonly [Which in Kind]: (asked: Asked<Which>) => Answer<Which> | Promise<Answer<Which>>;
};

/** Runs that are kept for the next question about the same study: with their ranges they take some ten megabytes. */
const mostRuns = 4;
const mostComparisons = 8;

/** Answers questions in this thread, one by one. */
export function answersWith({ assumptions, files }: Means): Answers {
  const comparisons = runCache(mostComparisons, ({ text, fileName, files: then }: ComparedText) =>
    comparedRun(
      readStudyText(text, fileName),
      then ? readAssumptions(new Map(Object.entries(then))) : assumptions,
    ),
  );
  const runs = runCache(mostRuns, ({ text, fileName }: StudyText) =>
    runStudy(readStudyText(text, fileName), assumptions),
  );
  const toldRun = (asked: ToldText) => {
    const run = runs(asked);
    return { run, told: asked.odds && toldOdds(run, asked.odds) };
  };
  return {
    ...comparing(comparisons),
    results: (asked) => resultsBody(runs(asked), asked.report),
    report: (asked) => {
      const { run, told } = toldRun(asked);
      return bytesOf(renderReport(run, linkedAssets, asked.links, told, asked.part));
    },
    printable: (asked) => {
      const { run, told } = toldRun(asked);
      return {
        body: renderReportBody(run, told, { part: asked.part }),
        settings: printSettings(run.document, asked.edition),
      };
    },
    figures: (asked) => bytesOf(JSON.stringify(resultsJson(runs(asked)))),
    plainForms: (asked) => plainForms({ ...toldRun(asked), edition: asked.edition }),
    formsToPrint: (asked) => formsToPrint({ ...toldRun(asked), edition: asked.edition }),
    printedForms: (asked) => formsOfPrints(toldRun(asked), asked.printed),
    issueToPrint: (asked) => preparedIssue(asked.draft, { ...toldRun(asked), files }),
    issued: ({ printed, ...prepared }) => completedIssue(prepared, printed),
    packed: ({ pdf }) => finishPdf(pdf),
    digestOfIssue: ({ pdf }) => digestOfIssue(pdf),
    verification: ({ pdf, kept }) => verifyIssue(pdf, { kept: () => kept }),
  };
}

function comparing(
  runs: (asked: ComparedText) => ComparedRun,
): Pick<Answers, "balance" | "effect" | "differences" | "explanation"> {
  const pairOf = ({ left, right }: ComparedPair) => {
    const pair = [runs(left), runs(right)] as const;
    return { pair, found: studyDifferences(...pair) };
  };
  return {
    balance: (asked) => balanceOf(asked, runs),
    effect: ({ before, text, fileName, names }) =>
      effectTable([runs({ text: before, fileName }), runs({ text, fileName })], names),
    differences: (asked) => {
      const { pair, found } = pairOf(asked);
      return toldDifferences(asked, pair, found);
    },
    explanation: async (asked) => {
      const { pair, found } = pairOf(asked);
      return toldDifferences(asked, pair, found, await explained(...pair, found));
    },
  };
}

function toldDifferences(
  { names }: ComparedPair,
  pair: readonly [ComparedRun, ComparedRun],
  found: Parameters<typeof differenceView>[1],
  explanation?: Parameters<typeof differenceView>[2],
): ToldDifferences {
  return {
    view: differenceView(pair, found, explanation, names),
    json: differencesJson(found, explanation),
  };
}

function balanceOf(asked: StudyText, runs: (asked: StudyText) => ComparedRun): BalanceState {
  try {
    const run = runs(asked);
    return { line: balanceLine(run), used: run.usedAssumptions };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { subject: error.subject, problems: error.problems };
  }
}

const resultsBody = (run: StudyRun, report: string): string =>
  renderPage("partials/results-body", { ...reportView(run), links: { report } });

async function digestOfIssue(pdf: Uint8Array): Promise<string | undefined> {
  try {
    return (await readIssue(pdf)).record.digest;
  } catch (error) {
    if (error instanceof NotIssuedError) return undefined;
    throw error;
  }
}

const encoder = new TextEncoder();
const bytesOf = (text: string): Uint8Array => encoder.encode(text);
