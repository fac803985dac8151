import type { ComparedRun, StudyDifferences } from "../../study/compared/compared.js";
import type { Explanation } from "../../study/compared/explain.js";
import { figures } from "../../study/compared/figures.js";
import type { InputDifference } from "../../study/compared/input-differences.js";
import type { PlanDifference } from "../../study/compared/plan-differences.js";
import type { ResultDifference } from "../../study/compared/result-differences.js";
import { changeText, figureText } from "../words/figure-text.js";
import { capitalised, type Formatter, formatter } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { type Explained, explainedView, type SideNames } from "./explained-view.js";
import { type OtherLake, otherLake } from "./parts-table.js";
import { requestedTable } from "./requested-table.js";

export interface DifferenceView {
  readonly summary: string;
  readonly limits: readonly string[];
  /** Absent where both request the same option. */
  readonly requested: TableView | undefined;
  /** Absent where nothing differs. */
  readonly inputs: TableView | undefined;
  readonly options: TableView | undefined;
  readonly structures: TableView | undefined;
  /** Absent where every part is kept by the same plan. */
  readonly plans: TableView | undefined;
  /** Absent where both studies are of one lake. */
  readonly otherLake: OtherLake | undefined;
  /** Absent until it is worked out, and where it cannot be. */
  readonly explained: Explained | undefined;
  /** Whether so much differs that what went in, and all that came out, are folded away. */
  readonly isLong: boolean;
}

/** Rows of inputs that are read from top to bottom: of a revision beside the next there are a few, of two lakes a hundred. */
const mostInputs = 15;

/** Two studies beside each other. @param explanation undefined until it is known */
export function differenceView(
  [left, right]: readonly [ComparedRun, ComparedRun],
  found: StudyDifferences,
  explanation: Explanation | undefined,
  names: SideNames,
): DifferenceView {
  const format = { left: formatOf(left), right: formatOf(right) };
  const optionRows = resultRows(found, "option", format);
  const structureRows = resultRows(found, "structure", format);
  const { money } = right.document;
  return {
    summary: summary(found, optionRows.length + structureRows.length),
    limits: found.limits,
    requested: requestedTable(
      { left: { run: left, format: format.left }, right: { run: right, format: format.right } },
      found,
      names,
    ),
    otherLake: otherLake([left, right], found.parts, format),
    isLong: found.inputs.length > mostInputs,
    inputs: inputsTable(found.inputs, names),
    options: resultTable(
      "options",
      `Figures that differ, in ${money.currency} at central values`,
      optionRows,
      names,
    ),
    structures: resultTable(
      "structures",
      `Expected cost of structures without a program that differs, present value in ${money.currency} at central values`,
      structureRows,
      names,
    ),
    plans: plansTable(found, [format, names]),
    explained:
      explanation &&
      explainedView(explanation, { format: format.right, requested: found.requested.right, names }),
  };
}

const formatOf = ({ document }: ComparedRun) => formatter(document.money.currency, document.study.units);

function summary({ inputs }: StudyDifferences, results: number): string {
  const moving = inputs.filter(({ movesFigures }) => movesFigures).length;
  const printed = inputs.length - moving;
  const inputText = counted(moving, "input that moves figures differs", "inputs that move figures differ");
  const printedText =
    printed === 0 ? "" : `, and ${counted(printed, "name or note", "names and notes")} that move none`;
  const resultText = counted(results, "figure comes out differently", "figures come out differently");
  return `${capitalised(inputText)}${printedText}; ${resultText}.`;
}

const counted = (count: number, one: string, more: string) =>
  `${count === 0 ? "no" : count} ${count === 1 ? one : more}`;

function inputsTable(inputs: readonly InputDifference[], names: SideNames): TableView | undefined {
  if (inputs.length === 0) return undefined;
  const moving = inputs.filter(({ movesFigures }) => movesFigures);
  const printed = inputs.filter(({ movesFigures }) => !movesFigures);
  const owners = [...new Set(moving.map(({ ownerName }) => ownerName))];
  return {
    id: "table-inputs",
    caption: "Inputs that differ, as typed",
    head: head("Input", names.left, names.right),
    rows: [
      ...owners.flatMap((owner) => [
        groupRow(capitalised(owner)),
        ...moving.filter(({ ownerName }) => ownerName === owner).map(inputRow),
      ]),
      ...(printed.length > 0
        ? [groupRow("Names and notes, which move no figure"), ...printed.map(inputRow)]
        : []),
    ],
  };
}

const inputRow = ({ name, left, right }: InputDifference): RowView =>
  row(capitalised(name), left ?? "not there", right ?? "not there");

/** The plans that changed, and what keeping the old one would have cost. */
function plansTable(
  { plans }: StudyDifferences,
  [format, names]: readonly [Formats, SideNames],
): TableView | undefined {
  if (plans.length === 0) return undefined;
  const named = ({ plan, isPrescribed }: PlanDifference["left"]) =>
    isPrescribed ? `${plan} (prescribed)` : plan;
  return {
    id: "table-differing-plans",
    caption: `Parts that are kept by another plan, cost a year in ${names.left} and ${names.right}`,
    head: head(
      "Part",
      `Plan, ${names.left}`,
      num("Cost a year"),
      `Plan, ${names.right}`,
      num("Cost a year"),
      num(`The former plan in ${names.right}`),
    ),
    rows: plans.map(({ structure, part, left, right, leftPlanAtRight }) =>
      row(
        `${structure}: ${part}`,
        named(left),
        num(format.left.exactMoney(left.yearlyCost)),
        named(right),
        num(format.right.exactMoney(right.yearlyCost)),
        num(leftPlanAtRight === undefined ? "not possible" : format.right.exactMoney(leftPlanAtRight)),
      ),
    ),
    note: "The last column tells what the change of plan saves: what the part would cost if its former plan were kept.",
  };
}

interface Formats {
  readonly left: Formatter;
  readonly right: Formatter;
}

/** Rows whose sides print differently, under the option or structure that they are of. */
function resultRows(
  { results, moneyCompares }: StudyDifferences,
  kind: ResultDifference["of"],
  format: Formats,
): { readonly owner: string; readonly row: RowView }[] {
  return results
    .filter(({ of }) => of === kind)
    .flatMap((each) => {
      const left = figureText(each.figure, each.left, format.left);
      const right = figureText(each.figure, each.right, format.right);
      if (left === right) return [];
      const shownDifference =
        figures[each.figure].kind !== "money" || moneyCompares ? each.difference : undefined;
      const difference =
        shownDifference === undefined ? "" : changeText(each.figure, shownDifference, format.right);
      const label = kind === "structure" ? each.name : capitalised(figures[each.figure].name);
      return [{ owner: each.name, row: row(label, num(left), num(right), num(difference)) }];
    });
}

function resultTable(
  kind: "options" | "structures",
  caption: string,
  rows: ReturnType<typeof resultRows>,
  names: SideNames,
): TableView | undefined {
  if (rows.length === 0) return undefined;
  const owners = [...new Set(rows.map(({ owner }) => owner))];
  const under = (owner: string) => rows.filter((each) => each.owner === owner).map((each) => each.row);
  return {
    id: `table-differing-${kind}`,
    caption,
    head: head(
      kind === "options" ? "Figure" : "Structure",
      num(names.left),
      num(names.right),
      num("Difference"),
    ),
    rows:
      kind === "options"
        ? owners.flatMap((owner) => [groupRow(owner), ...under(owner)])
        : rows.map((each) => each.row),
    ...(kind === "options" ? { note: "Differences of shares are in percentage points." } : {}),
  };
}
