import { sumOf } from "../../lists.js";
import { daysInYear, monthOfDay, monthStart } from "../../model/lake/calendar.js";
import type { TracedFound, TracedPhase } from "../../study/traced/traced-found.js";
import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin, percent } from "../words/format.js";
import { monthName } from "../words/month-name.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { courseTable, expectedTable } from "./found-tables.js";
import { phaseNames } from "./phase-names.js";
import { byFirstYear, type WallView, wallView } from "./wall-view.js";

/** What is done if mussels are found, and the sheet for the wall. */
export interface FoundView {
  readonly intro: string;
  readonly phases: TableView | undefined;
  readonly expected: TableView | undefined;
  readonly course: TableView;
  readonly firstYear: TableView;
  readonly notes: readonly string[];
  readonly wall: WallView;
}

export function foundView(context: ReportContext): FoundView | undefined {
  const found = context.run.found();
  const wall = wallView(context);
  return (
    found &&
    wall && {
      intro:
        "The agencies in charge decide; this is what the authority has ready. Days count from the first suspicion.",
      phases: found.phases.length === 0 ? undefined : phasesTable(found, context),
      expected: found.phases.length === 0 ? undefined : expectedTable(found, context),
      course: courseTable(found, context),
      firstYear: firstYearTable(context),
      notes: notesOf(found, context),
      wall,
    }
  );
}

const basisNames: Readonly<Record<TracedPhase["when"], string>> = {
  found: "each find",
  tried: "each attempt",
  known: "a year, while known",
  watched: "a clean year",
  delisted: "once",
};

function phasesTable({ phases, document }: TracedFound, context: ReportContext): TableView {
  const { format, run, priceYear, bearerName, comparison } = context;
  const payer = bearerName(comparison.input.money.programBearer);
  return {
    id: "table-found-phases",
    caption: `Phases, dates and costs, ${run.document.money.currency} of ${priceYear}`,
    head: head("Phase", "What is done", "Days", "From", "Who decides", "Cost"),
    rows: phases.map(({ phase, cost, when }) =>
      row(
        phaseNames[phase.phase],
        [phase.what, phase.permits].filter(Boolean).join(". "),
        daysText(phase),
        dateText(phase, document.suspectedOn),
        phase.decides ?? "agency in charge",
        [
          `${phase.cost?.spread ? phase.cost.text : format.exactMoney(cost)} ${basisNames[when]}`,
          ...(phase.payer ? [bearerName(phase.payer)] : []),
          ...(phase.publicShare ? [`public share ${percent(phase.publicShare.value)}`] : []),
        ].join("; "),
      ),
    ),
    note: `Paid by ${payer} where nobody else is named. Three amounts are a range: low, likeliest and high.`,
    compact: true,
  };
}

/** "2–9" */
const daysText = ({ starts, lasts }: TracedPhase["phase"]): string =>
  [starts, ...(lasts > 0 ? [starts + lasts] : [])].map((day) => day.toLocaleString("en-US")).join("–");

/** "17 Jul" */
function dateText({ starts }: TracedPhase["phase"], suspectedOn: string): string {
  const [month = 1, day = 1] = suspectedOn.split("-").map(Number);
  const first = monthStart(month - 1) + day - 1 + starts;
  const calendarMonth = monthOfDay(first);
  return `${(first % daysInYear) - monthStart(calendarMonth) + 1}\u00a0${monthName(calendarMonth).slice(0, 3)}`;
}

const mostStructures = 3;

/** Inspections and first cleanings: what each structure costs in the first year of an infestation, and once it is mature. */
function firstYearTable({ traced, format }: ReportContext): TableView {
  const shown = traced.structures
    .filter(({ isBuilt, cost }) => isBuilt && cost.matureMean > 0)
    .toSorted(byFirstYear);
  return {
    id: "table-found-structures",
    caption: `Structures, the most expensive in the first year first${shown.length > mostStructures ? `; ${shown.length - mostStructures} more in the appendix of cost lines` : ""}`,
    head: head("Structure", "To be inspected", num("First year"), num("Per year, once established")),
    rows: shown
      .slice(0, mostStructures)
      .map(({ result, cost, kindName }) =>
        row(
          result.structure.name,
          listedWithin([...new Set(result.components.map(({ name }) => name))], 5) || kindName,
          num(boardMoney(format).money(cost.first)),
          num(format.money(cost.matureMean)),
        ),
      ),
    compact: true,
  };
}

const sampleNames = {
  planktonTows: "plankton tow",
  settlementPlates: "settlement plate",
  searches: "day of search",
  ednaSamples: "DNA sample",
} as const;

function notesOf({ lostFees, oneMore, phases, course }: TracedFound, context: ReportContext): string[] {
  const { format, bearerName, requested, horizon } = context;
  const fees = lostFees.filter(({ amount }) => amount > 0);
  const byPayer = [...new Set(fees.map(({ bearer }) => bearer))].map(
    (bearer) =>
      `${bearerName(bearer)} ${format.money(sumOf(fees.filter((each) => each.bearer === bearer).map(({ amount }) => amount)))}`,
  );
  const benefit = requested.responseBenefit();
  const isTreatmentIdle = phases.some(({ when }) => when === "tried") && course.withIt.tried === 0;
  return [
    ...(isTreatmentIdle
      ? [
          "No attempt is expected: the requested option tries none or finds mussels too late. A treatment costs nothing here until an option names it as its response.",
        ]
      : []),
    ...(byPayer.length > 0
      ? [
          `While ramps are closed launch fees are lost, each time: ${listedWithin(byPayer, byPayer.length)}; not in the table.`,
        ]
      : []),
    ...(oneMore.length === 0
      ? []
      : [
          `What one more a year is worth before its price, since mussels are found sooner: ${listedWithin(
            oneMore.map(({ kind, perYear }) => `${sampleNames[kind]} ${format.money(perYear)} a year`),
            oneMore.length,
          )}.`,
        ]),
    ...(benefit === undefined
      ? []
      : [
          `Eradication attempts ${benefit.isNegative() ? "cost" : "save"} ${format.money(benefit.abs())} more than they ${benefit.isNegative() ? "save" : "cost"} in present value over ${horizon} years.`,
        ]),
    "Keeping mussels from other lakes once they are here is a duty or a choice of policy, told apart in the balance; it saves this lake’s structures nothing.",
  ];
}
