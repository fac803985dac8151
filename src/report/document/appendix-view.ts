import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { programVersion } from "../../assumptions/version.js";
import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { Sensitivity } from "../../study/odds/odds.js";
import { byYearTable } from "../rack/infestation-years.js";
import { breakable, rangeText, statedNumber, unitText } from "../words/assumption-text.js";
import { significant } from "../words/format.js";
import { ownIn, usualIn } from "../words/usual-and-own.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import {
  decisiveEntries,
  movesFigures,
  type RegisterFamily,
  type RegisterLine,
  registerFamilies,
  registerLines,
  usedEntries,
} from "./assumption-register.js";
import { basesOf, consulted, readText } from "./bases.js";
import { type CheckRow, checkRows, isOpen } from "./check-rows.js";
import { type ReportContext, studyUnits } from "./context.js";
import { everyLineTable, linesTable } from "./lines-table.js";
import { pricesText } from "./money-view.js";
import { typicalView } from "./typical-table.js";

export interface AppendixView {
  readonly lines: TableView;
  /** Those of all structures, for the tables as files; absent where print has them. */
  readonly everyLine: TableView | undefined;
  readonly byYear: TableView;
  /** All with their notes, for the tables as files. */
  readonly assumptions: TableView;
  /** All that figures depend on. */
  readonly register: readonly RegisterFamily[];
  /** Those that move the answer most, with their notes; none where no odds were drawn and none is the study's own. */
  readonly decisive: readonly (RegisterLine & { readonly note: string })[];
  /** Absent where nothing of the study is typical. */
  readonly typical: ReturnType<typeof typicalView>;
  readonly pricesNote: string;
  readonly overrides: TableView | undefined;
  readonly alterations: TableView | undefined;
  /** All, for the tables as files. */
  readonly checks: TableView;
  readonly checksText: string;
  /** Those that did not pass. */
  readonly shownChecks: TableView | undefined;
  /** Of what is told with its note. */
  readonly sources: readonly { readonly key: string; readonly citation: string; readonly read: string }[];
  readonly bases: string;
}

export function appendixView(context: ReportContext, matters?: Sensitivity): AppendixView {
  const decisive = decisiveEntries(context, matters);
  return {
    lines: linesTable(context),
    everyLine: everyLineTable(context),
    byYear: byYearTable(context),
    assumptions: assumptionsTable(context),
    register: registerFamilies(usedEntries(context).filter(movesFigures), context),
    decisive: registerLines(decisive, context).map((line, index) => ({
      ...line,
      note: noteText(at(decisive, index)),
    })),
    typical: typicalView(context.run.document, matters),
    pricesNote: valuesNote,
    overrides: overridesTable(context),
    alterations: alterationsTable(context),
    ...checksView(context),
    sources: sources(decisive, context),
    bases: basesText(context),
  };
}

/** What was estimated from counts stands row by row in the tables as files. */
const noteText = ({ note }: Assumption): string =>
  note.replace(/^(Estimated from the counts in [^:]+): .*?(?=\.( |$))/, "$1");

function assumptionsTable(context: ReportContext): TableView {
  const { run, assumptionNumber } = context;
  const overrides = new Map(run.overrides.map((override) => [override.entry.id, override]));
  return {
    id: "table-assumptions",
    caption: "Every assumption used, with its origin",
    head: head("Assumption", num("Value (low–high), unit"), "Basis", "Source and note"),
    rows: usedEntries(context).map((entry) => {
      const own = overrides.get(entry.id);
      return row(
        `${assumptionNumber(entry.id)} ${breakable(entry.id)}`,
        num(
          own
            ? `${ownIn(own, studyUnits(context))}, own; usual ${usualIn(entry, studyUnits(context)).range}`
            : [
                `${statedNumber(entry.value)} (${rangeText(entry)}) ${unitText(entry)}`,
                usedText(entry, context),
              ]
                .filter(Boolean)
                .join(" → "),
        ),
        own ? "operator" : entry.basis,
        [`[${entry.source}]`, entry.note].filter(Boolean).join(" "),
      );
    }),
    note: pricesNote(context),
  };
}

/** A price in the study's money with what it was multiplied by; nothing where it is used as its source has it. */
function usedText(entry: Assumption, { run, priceYear }: ReportContext): string {
  const factor = run.prices.factorOf(entry);
  if (factor === 1) return "";
  const { currency } = run.document.money;
  const year = run.prices.index ? priceYear : entry.priceYear;
  const unit = entry.unit.replace("$", currency);
  return `${significant(entry.value * factor, 4)} ${unit} of ${year} (× ${significant(factor, 4)})`;
}

const valuesNote = `Values between low and high are simulated by a beta-PERT distribution where no other is named. Appendix ${appendixLetter("money")} says how prices come into the study's money. “Judged” means that the project's authors found no published value: replace it with the operator's own.`;

const pricesNote = (context: ReportContext): string =>
  `A value stands as its source has it; after the arrow, as it is used. ${valuesNote} ${pricesText(context)}`;

/** Which set of an agency stands where the study has no value of its own. */
const agencyNote = (agency: AssumptionSet["agency"]): { readonly note?: string } =>
  agency === undefined
    ? {}
    : {
        note: `Values of ${agency.name}, version ${agency.version}, stand where the study has none of its own; the project's where neither has one.`,
      };

function overridesTable(context: ReportContext): TableView | undefined {
  const { run } = context;
  if (run.overrides.length === 0) return undefined;
  return {
    id: "table-overrides",
    caption: "Own values in place of the project's assumptions",
    head: head("Assumption", num("Own value"), num("Project's value"), "Reason", "Within the stated range"),
    rows: run.overrides.map((own) => {
      const { value, stated } = usualIn(own.entry, studyUnits(context));
      return row(
        own.entry.id,
        num(ownIn(own, studyUnits(context))),
        num(stated === "" ? value : `${value} (stated as ${stated})`),
        own.reason,
        own.outsideRange ? "no" : "yes",
      );
    }),
    ...agencyNote(run.assumptions.agency),
  };
}

function alterationsTable({ run }: ReportContext): TableView | undefined {
  const { alterations } = run.assumptions;
  if (alterations.length === 0) return undefined;
  return {
    id: "table-alterations",
    caption: `Not as version ${programVersion()} of the program ships it`,
    head: head("Altered in the folder of assumptions", "Used here", "As shipped"),
    rows: alterations.map(({ what, found, shipped }) => row(what, found, shipped)),
  };
}

type ChecksView = Pick<AppendixView, "checks" | "checksText" | "shownChecks">;

function checksView({ run }: ReportContext): ChecksView {
  const all = checkRows(run);
  const told = all.filter(({ passed }) => !passed);
  const id = "table-checks";
  return {
    checks: checksTable({ id, caption: "Plausibility checks" }, all),
    checksText: `${counted(all.length, "check")} of the entries and the results ${all.length === 1 ? "was" : "were"} made: ${endingText(told)}. The full list is in the tables as files.`,
    shownChecks:
      told.length === 0
        ? undefined
        : checksTable({ id: "table-shown-checks", caption: "Checks that did not pass" }, told),
  };
}

function endingText(told: readonly CheckRow[]): string {
  if (told.length === 0) return "all passed";
  const confirmed = told.filter((check) => !isOpen(check)).length;
  const listed = `${told.length} did not pass and ${told.length === 1 ? "is" : "are"} listed below`;
  if (confirmed === 0) return listed;
  return `${listed}; the author confirmed ${confirmed === told.length ? "what was entered" : `${confirmed} of them`}`;
}

const passedText = (check: CheckRow): string => {
  if (check.passed) return "yes";
  return isOpen(check) ? "NO" : "no; confirmed by the author";
};

const checksTable = (named: Pick<TableView, "id" | "caption">, checks: readonly CheckRow[]): TableView => ({
  ...named,
  head: head("Check", "Found", "Allowed", "Passed"),
  rows: checks.map((check) => ({
    ...row(check.what, check.found, check.allowed, passedText(check)),
    failed: isOpen(check),
  })),
  compact: true,
});

/** Of entries, with those that their notes name. */
function sources(entries: readonly Assumption[], { run }: ReportContext) {
  const named = new Set(entries.flatMap(({ source, note }) => [source, ...note.split(/[^a-z0-9-]+/)]));
  return [...run.assumptions.sources]
    .filter(([key]) => named.has(key))
    .sort()
    .map(([key, source]) => ({
      key,
      ...source,
      read: consulted[source.read],
    }));
}

/** How many of the assumptions used stand on what. */
function basesText(context: ReportContext): string {
  const { all, counts } = basesOf(context);
  return `Of ${all} assumptions used: ${counts.map(([basis, count]) => `${count} ${basis}`).join(", ")}. ${readText(context)} Where a range is marked normal or lognormal, it runs from the 10th to the 90th percentile.`;
}
