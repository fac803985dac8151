import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { noMoney } from "../../model/money/decimal.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { StructureCost } from "../../study/traced/traced-structure.js";
import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { carrying } from "../print/carried-totals.js";
import { addingUp, addingUpNote, stepFor } from "../words/adding-up.js";
import { listedWithin } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { unitCostsTable } from "./unit-costs-table.js";

export interface InfestationView {
  readonly summary: string;
  /** The most expensive ones by name, the others together. */
  readonly byStructure: TableView;
  /** All of them, for the tables as files; absent where the other table names them all. */
  readonly everyStructure: TableView | undefined;
  /** Absent where no structure delivers or treats water of its own. */
  readonly unitCosts: TableView | undefined;
  readonly apart: string;
}

interface StructureCostRow extends StructureCost {
  readonly name: string;
  readonly bearer: string;
}

/** Cost of each structure, most expensive first. */
export const structureCosts = ({ traced, bearerName }: ReportContext): StructureCostRow[] =>
  traced.structures
    .map(({ result: { structure }, cost }) => ({
      ...cost,
      name: structure.name,
      bearer: bearerName(structure.bearer),
    }))
    .sort((a, b) => b.expected.comparedTo(a.expected));

export function infestationView(context: ReportContext): InfestationView {
  const rows = structureCosts(context);
  const mature = rows.reduce((sum, each) => sum + each.matureMean, 0);
  return {
    summary: summary(context, mature),
    byStructure: structuresTable("table-structures", withOthers(rows), context),
    everyStructure:
      rows.length > mostNamed ? structuresTable("table-every-structure", rows, context) : undefined,
    unitCosts: unitCostsTable(context),
    apart: apartText(context),
  };
}

/** More rows than these push the rest of the board's part away. */
const mostNamed = 22;

type TableRow = Pick<StructureCostRow, "name" | "bearer" | "first" | "matureMean" | "expected">;

function withOthers(rows: readonly StructureCostRow[]): TableRow[] {
  if (rows.length <= mostNamed) return [...rows];
  const others = rows.slice(mostNamed - 1);
  return [
    ...rows.slice(0, mostNamed - 1),
    {
      name: `${counted(others.length, "other")} together (every-structure.csv of the tables as files)`,
      bearer: "",
      first: others.reduce((sum, { first }) => sum.plus(first), noMoney),
      matureMean: others.reduce((sum, { matureMean }) => sum + matureMean, 0),
      expected: others.reduce((sum, { expected }) => sum.plus(expected), noMoney),
    },
  ];
}

const amountColumns = [2, 3, 4];

function structuresTable(id: string, rows: readonly TableRow[], context: ReportContext): TableView {
  const { format, priceYear, infestedSince, traced } = context;
  const { year, meanYears } = traced.mature;
  const attempts = attemptsOf(context);
  const columns = [
    rows.map(({ first }) => first.toNumber()),
    rows.map(({ matureMean }) => matureMean),
    [...rows.map(({ expected }) => expected.toNumber()), ...attempts.map(({ expected }) => expected)],
  ];
  const steps = columns.map(hundredsAtLeast);
  const rounded = columns.map((column, index) => addingUp(column, at(steps, index)));
  const amounts = (place: number) =>
    rounded.map(({ parts }) => num(place < parts.length ? format.exactMoney(at(parts, place)) : "–"));
  const lines = [...rows, ...attempts];
  return {
    id,
    caption: `Cost of an infestation by structure, prices of ${priceYear}`,
    head: head(
      "Structure",
      "Who pays",
      num("First year"),
      num("Per year, once established"),
      num(infestedSince === undefined ? "Expected present value, no program" : "Present value"),
    ),
    ...carrying(
      lines.map(({ name, bearer }, place) => row(name, bearer, ...amounts(place))),
      {
        columns: amountColumns,
        amounts: lines.map((_, place) => rounded.map(({ parts }) => parts[place] ?? 0)),
        text: format.exactMoney,
      },
    ),
    total: row("All structures", "", ...rounded.map(({ sum }) => num(format.exactMoney(sum)))),
    note: `First year: the first ${infestedSince === undefined ? "after establishment" : "of this budget"}. Per year, once established: mean of the ${counted(meanYears, "year")} from year ${year + 1}, which hold whole cycles of cleaning as far as they can. ${addingUpNote(listedOnce(steps.map((step) => format.exactMoney(step))))} Appendix ${appendixLetter("cost-lines")} has the lines.`,
  };
}

/** Amounts of less than a hundred tell nothing beside thousands. */
const hundredsAtLeast = (amounts: readonly number[]) =>
  Math.max(Math.max(...amounts) < 1000 ? 1 : 100, stepFor(amounts));

const listedOnce = (texts: readonly string[]) => listedWithin([...new Set(texts)], texts.length);

/** Containment without a program, where it states a response. */
function attemptsOf({ comparison, bearerName }: ReportContext) {
  const { containment } = comparison.baseline;
  if (containment === undefined) return [];
  return [
    {
      name: "Eradication attempts",
      bearer: bearerName(containment.line.bearer),
      expected: containment.presentValue.toNumber(),
    },
  ];
}

function summary({ comparison, format, horizon, infestedSince }: ReportContext, mature: number): string {
  const { money } = boardMoney(format);
  const total = money(comparison.baseline.presentValue.infestation);
  const yearly = money(mature);
  return infestedSince === undefined
    ? `Once mussels are established, the structures listed cost about ${yearly} a year more than today. Allowing for the chance and timing, the expected cost is ${total} in present value over ${counted(horizon, "year")} without a program, at central values.`
    : `Once established, mussels cost the structures listed about ${yearly} a year; over ${counted(horizon, "year")}, including the years until then, ${total} in present value.`;
}

function apartText({ comparison, format }: ReportContext): string {
  const apart = comparison.baseline.presentValueByAccount.get("other") ?? noMoney;
  return apart.isZero()
    ? "Losses other than infrastructure (recreation, property, fishery) are not counted."
    : `Losses other than infrastructure that staff entered come to ${format.money(apart)} in expected present value without a program. They count in the second account only.`;
}
