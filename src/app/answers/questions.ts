import type { Form } from "../../forms/form.js";
import type { FormsToPrint, PrintedParts } from "../../forms/print-parts.js";
import type { IssueDraft, PreparedIssue, PrintedPart } from "../../issue/make-issue.js";
import type { AskedSheet, WorkedSheets } from "../../method/worked-sheets.js";
import type { BalanceLine } from "../../report/board/balance-line.js";
import type { DifferenceView } from "../../report/compared/difference-view.js";
import type { SideNames } from "../../report/compared/explained-view.js";
import type { ImpliedText } from "../../report/document/check-rows.js";
import type { ReportPart } from "../../report/document/sections.js";
import type { PdfDescription } from "../../report/print/accessible-pdf.js";
import type { PrintSettings } from "../../report/print/pdf.js";
import type { PartName, PlanPicks } from "../../report/rack/plan-picks.js";
import type { TableView } from "../../report/words/view-types.js";
import type { TriedWork } from "../../study/exports/orders/tried-work.js";
import type { ExportTrial } from "../../study/exports/tried-export.js";
import type { FileTrial, TriedFile } from "../../study/exports/tried-file.js";
import type { TriedLog } from "../../study/exports/tried-log.js";
import type { TriedSamples } from "../../study/exports/tried-samples.js";
import type { Odds } from "../../study/odds/odds.js";
import type { Problem } from "../../study/reading/problems.js";
import type { OwnEffects } from "../../study/swept/own-effects.js";
import type { SweptValues } from "../../study/swept/points.js";
import type { Setting } from "../../study/swept/settings.js";
import type { Sweep } from "../../study/swept/sweep.js";

/** A study as it is kept. */
export interface StudyText {
  readonly text: string;
  readonly fileName: string;
}

/** The text of what is kept, and nothing else of it: answers go by it. */
export const textOf = ({ text, fileName }: StudyText): StudyText => ({ text, fileName });

/** With the odds that were drawn for it; they follow from its text. */
export interface StudyTextWithOdds extends StudyText {
  readonly odds: Odds | undefined;
}

/** A study that is compared; what was issued brings the assumptions of then, by their files. */
export interface ComparedText extends StudyText {
  readonly files?: Readonly<Record<string, string>>;
}

export interface ComparedPair {
  readonly left: ComparedText;
  readonly right: ComparedText;
  readonly names: SideNames;
}

/** A study that a program sends, and what is set in turn. */
export interface SweepAsked extends StudyText {
  readonly values: readonly SweptValues[];
}

/** The balance of a study with the ids of the assumptions that it rests on, or why there is none yet. */
export type BalanceState =
  | {
      readonly line: BalanceLine;
      readonly used: readonly string[];
      /** What the entries imply, at their places. */
      readonly implied: readonly ImpliedText[];
      /** Entries outside of what is usual for their kind. */
      readonly unusual: readonly Problem[];
    }
  | UnfinishedBalance;

export interface UnfinishedBalance {
  readonly line?: undefined;
  /** What the problems are of: the study, or its file. */
  readonly subject: string;
  readonly problems: readonly Problem[];
}

/** What is worked out of studies for the server's pages, by kind: what is asked, and what is answered. */
interface Questions {
  readonly balance: { readonly asked: StudyText; readonly answer: BalanceState };
  /** What a change of a study does to the board's figures. */
  readonly effect: {
    readonly asked: StudyText & { readonly before: string; readonly names: readonly [string, string] };
    readonly answer: TableView;
  };
  /** What own values for assumptions do to the net benefit, each alone and together. */
  readonly ownEffects: {
    readonly asked: StudyText & { readonly values: readonly Setting[] };
    readonly answer: OwnEffects;
  };
  readonly differences: { readonly asked: ComparedPair; readonly answer: PrintedDifferences };
  /** The same with what explains them; takes seconds. */
  readonly explanation: { readonly asked: ComparedPair; readonly answer: PrintedDifferences };
  /** Every option at each combination of some values; takes minutes where they are many. */
  readonly sweep: { readonly asked: SweepAsked; readonly answer: Sweep };
  /** What would come of an exported file in a study. */
  readonly fileTried: { readonly asked: FileTrial; readonly answer: TriedFile };
  readonly logTried: { readonly asked: ExportTrial; readonly answer: TriedLog };
  readonly samplesTried: { readonly asked: ExportTrial; readonly answer: TriedSamples };
  readonly workTried: { readonly asked: ExportTrial; readonly answer: TriedWork };
  /** The page of results without its frame; `report` is the address of the report. */
  readonly results: { readonly asked: StudyText & { readonly report: string }; readonly answer: string };
  /** The page on where the chance comes from, without its frame; `study` is the address of the study. */
  readonly chance: { readonly asked: StudyText & { readonly study: string }; readonly answer: string };
  /** The parts of a study with their plans; one of them, if asked for, with every plan priced. */
  readonly plans: {
    readonly asked: StudyText & { readonly part: PartName | undefined };
    readonly answer: PlanPicks;
  };
  /** The report as a page. */
  readonly report: {
    readonly asked: StudyTextWithOdds & { readonly links: object; readonly part: ReportPart };
    readonly answer: Uint8Array;
  };
  /** The report to be printed. */
  readonly printable: {
    readonly asked: StudyTextWithOdds & { readonly part: ReportPart; readonly edition: string };
    readonly answer: { readonly body: string; readonly settings: PrintSettings };
  };
  /** The method document as a page, with the worked sheets of a study if one is given. */
  readonly method: {
    readonly asked: { readonly study: StudyText | undefined; readonly links: object };
    readonly answer: Uint8Array;
  };
  /** Sheets of one month of one structure, and the structures that have some. */
  readonly worked: {
    readonly asked: StudyText & { readonly asked: AskedSheet };
    readonly answer: WorkedSheets;
  };
  readonly methodToPrint: {
    readonly asked: { readonly study: StudyText | undefined };
    readonly answer: { readonly body: string; readonly settings: PrintSettings };
  };
  /** All figures as JSON. */
  readonly figures: { readonly asked: StudyTextWithOdds; readonly answer: Uint8Array };
  readonly plainForms: {
    readonly asked: StudyTextWithOdds & { readonly edition: string };
    readonly answer: readonly Form[];
  };
  readonly formsToPrint: {
    readonly asked: StudyTextWithOdds & { readonly edition: string };
    readonly answer: FormsToPrint;
  };
  readonly printedForms: {
    readonly asked: { readonly printed: PrintedParts };
    readonly answer: readonly Form[];
  };
  readonly issueToPrint: {
    readonly asked: StudyTextWithOdds & { readonly draft: IssueDraft };
    readonly answer: PreparedIssue;
  };
  /** One of its documents with what is attached to it, to be signed. */
  readonly issuedPart: {
    readonly asked: PrintedPart;
    readonly answer: Uint8Array;
  };
  readonly packed: {
    readonly asked: { readonly pdf: Uint8Array; readonly description: PdfDescription };
    readonly answer: Uint8Array;
  };
}

export interface PrintedDifferences {
  readonly view: DifferenceView;
  readonly json: object;
}

export type Kind = keyof Questions;
export type Asked<Which extends Kind> = Questions[Which]["asked"];
export type Answer<Which extends Kind> = Questions[Which]["answer"];

export type Question = {
  readonly [Which in Kind]: { readonly kind: Which; readonly asked: Asked<Which> };
}[Kind];

/** What is asked about a study that may be edited meanwhile. */
export interface LatestOf<Which extends Kind, Entry extends StudyText> {
  /** Whatever is asked about the same study and revision has the same, and nothing else has. */
  readonly study: string;
  /** The study as it is at the time. */
  readonly find: () => Entry;
  readonly askedOf: (entry: Entry) => Asked<Which>;
}

/** An answer with the study that it follows from. */
export interface LatestAnswer<Which extends Kind, Entry> {
  readonly entry: Entry;
  readonly answer: Answer<Which>;
}

/** Where questions about studies are answered. */
export interface Answering {
  /**
   * @param signal ends the wait; a question for which nobody waits before its turn is left out
   * @throws InputError for a study that cannot be computed
   */
  readonly ask: <Which extends Kind>(
    kind: Which,
    asked: Asked<Which>,
    signal?: AbortSignal,
  ) => Promise<Answer<Which>>;
  /**
   * Asks about a study as it is once the question's turn has come, so that nothing is worked out of texts that were
   * replaced before it.
   * @throws as `ask` and `find` do
   */
  readonly askLatest: <Which extends Kind, Entry extends StudyText>(
    kind: Which,
    latest: LatestOf<Which, Entry>,
    signal?: AbortSignal,
  ) => Promise<LatestAnswer<Which, Entry>>;
  /** What was answered before, and is remembered. */
  readonly known: <Which extends Kind>(kind: Which, asked: Asked<Which>) => Answer<Which> | undefined;
  /** Whether anything was asked yet that is remembered once answered: a new server does without workers until then. */
  readonly hasBegun: () => boolean;
  readonly close: () => Promise<void>;
}

/** Where questions wait for their turn. */
export interface AnsweringInTurn extends Pick<Answering, "close"> {
  readonly ask: <Which extends Kind>(
    kind: Which,
    asked: Asked<Which>,
    signal?: AbortSignal,
    turn?: InTurn<Which>,
  ) => Promise<Answer<Which>>;
}

export interface InTurn<Which extends Kind> {
  /** The same for whatever needs the same run. */
  readonly about: string;
  /** What is asked once its turn has come, in place of what was asked before. */
  readonly asked: () => Asked<Which>;
}
