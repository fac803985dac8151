import { counted } from "../../counted.js";
import type { PlanNumber } from "../../model/register/plan-numbers.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { PlanEntry } from "../../model/structures/catalogue.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { ReportContext } from "../document/context.js";
import { capitalised } from "../words/format.js";
import { head, row, type TableView } from "../words/view-types.js";

/** A plan of the catalogue, with what an engineer must settle before it is chosen; the method document has the rest. */
interface PlanText {
  readonly name: string;
  readonly parts: string;
  readonly permits: string;
  readonly cautions: string;
}

export interface PlanRegister {
  readonly plans: readonly PlanText[];
  readonly numbers: TableView | undefined;
}

/** The plans of the catalogue that some part of the study is kept in service by. */
export function planRegister(context: ReportContext): PlanRegister {
  const components = context.comparison.structures.flatMap((each) => each.components);
  const chosenFor = ({ id }: PlanEntry) =>
    components.filter(({ chosen }) => chosen.plan.entry.id === id).length;
  const entries = context.comparison.input.plans.filter((entry) => chosenFor(entry) > 0);
  return {
    plans: entries.map((entry) => ({
      name: capitalised(entry.name),
      parts: counted(chosenFor(entry), "part"),
      permits: entry.permits,
      cautions: entry.cautions,
    })),
    numbers: numbersTable(entries, context),
  };
}

const columns: ReadonlyArray<{ readonly head: string; readonly number: PlanNumber }> = [
  { head: "Capital per unit of size", number: "capital" },
  { head: "At a size of", number: "referenceSize" },
  { head: "Exponent of size", number: "sizeExponent" },
  { head: "Life", number: "life" },
  { head: "Upkeep, share of capital", number: "upkeep" },
  { head: "Settlers let on", number: "settlementFactor" },
  { head: "Out of service, once a life", number: "outageDays" },
];

const others: ReadonlyArray<readonly [number: PlanNumber, words: string]> = [
  ["cleaningShare", "cleaning over that of a bare surface"],
  ["inspection", "each inspection"],
  ["limitShare", "cleaned at this share of a limit"],
  ["temperature", "water at"],
  ["hours", "for"],
  ["energyPrice", "energy"],
  ["visit", "each visit"],
  ["switchingHours", "each change of lines"],
  ["dosePrice", "a volume dosed"],
];

/** Absent where no plan taken has numbers of its own. */
function numbersTable(entries: readonly PlanEntry[], context: ReportContext): TableView | undefined {
  const rows = entries.flatMap((entry) => {
    const cells = columns.map(({ number }) => numberText(entry, number, context));
    const rest = others.flatMap(([number, words]) => {
      const text = numberText(entry, number, context);
      return text === "" ? [] : [`${words} ${text}`];
    });
    const all = [...cells, rest.join("; ")];
    return all.every((text) => text === "")
      ? []
      : [row(capitalised(entry.name), ...all.map((text) => text || "–"))];
  });
  if (rows.length === 0) return undefined;
  return {
    id: "table-plan-numbers",
    caption: "Numbers of the plans, as used",
    head: head("Plan", ...columns.map((column) => column.head), "Other"),
    rows,
    note: `In brackets, the assumption in appendix ${appendixLetter("assumptions")}, with its range, price year and origin. Capital grows with size to the power of the exponent and is paid off over the life at the study's rate. Size: area of a coating or of a second line's wall, flow of a treatment. Cleaning itself is priced by the assumptions under “cleaning”.`,
    compact: true,
  };
}

/** A dose lets on what the assumption on oxidants says, in season only. */
function assumptionId({ numbers, measure }: PlanEntry, number: PlanNumber): AssumptionId | undefined {
  if (number === "settlementFactor" && measure === "oxidant-season") return "oxidant.settlement-factor";
  const ids: { readonly [Each in PlanNumber]?: AssumptionId } = numbers;
  return ids[number];
}

function numberText(entry: PlanEntry, number: PlanNumber, { run, assumptionNumber }: ReportContext): string {
  const id = assumptionId(entry, number);
  if (id === undefined) return "";
  const found = run.assumptions.entries.get(id);
  const reference = assumptionNumber(id);
  if (!found || reference === "") return "";
  const own = run.overrides.find(({ entry: { id: overridden } }) => overridden === id);
  const unit = unitText(found.unit);
  return own
    ? `${own.text}, own (${reference})`
    : `${found.value.toLocaleString("en-US")}${unit} (${reference})`;
}

function unitText(unit: string): string {
  if (unit === "1" || unit === "share") return "";
  return unit === "1/yr" ? " a year" : ` ${unit.replace("$", "USD")}`;
}
