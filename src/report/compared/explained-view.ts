import { at } from "../../lists.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { ExplainedCents, ExplainedPart, Explanation } from "../../study/compared/explain.js";
import type { InputGroup } from "../../study/compared/input-groups.js";
import type { WholeAmounts } from "../../study/compared/whole-parts.js";
import { capitalised, type Formatter, listedWithin } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** How much of the difference each changed input explains: a chart of steps, and the table behind it. */
export interface Explained {
  readonly steps: Steps | undefined;
  readonly table: TableView | undefined;
  /** How it was worked out, for a reader who asks. */
  readonly method: string;
}

/** Bars from the left study's figure to the right one's, each beginning where the one before ends. */
interface Steps {
  readonly title: string;
  readonly alternative: string;
  readonly tableId: string;
  readonly rows: readonly Step[];
  /** Place of zero on the common scale, 0 to 1000. */
  readonly zero: number;
}

interface Step {
  readonly label: string;
  readonly value: string;
  readonly kind: "total" | "up" | "down" | "none";
  /** On a scale from 0 to 1000. */
  readonly from: number;
  readonly length: number;
}

interface Telling {
  readonly format: Formatter;
  /** Name of the requested option. */
  readonly requested: string;
  readonly names: SideNames;
}

type Figure = keyof ExplainedCents;

export function explainedView(explanation: Explanation, telling: Telling): Explained {
  return {
    steps: steps(explanation, telling),
    table: table(explanation, telling),
    method: method(explanation),
  };
}

const partName = ({ groups }: ExplainedPart, format: Formatter): string =>
  capitalised(
    listedWithin(
      groups.map((group) => groupName(group, format)),
      4,
    ),
  );

/** Of small changes together: how many, and the most that one of them does by itself. */
function groupName({ name, inputs, mostAlone }: InputGroup, format: Formatter): string {
  if (inputs.length === 1) return name;
  const alone =
    mostAlone === undefined || mostAlone === Infinity
      ? ""
      : `, each at most ${format.exactMoney(mostAlone / centsPerUnit)} by itself`;
  return `${name} (${inputs.length} inputs${alone})`;
}

function steps(explanation: Explanation, { format, requested, names }: Telling): Steps | undefined {
  const figure: Figure = explanation.left.netBenefit === undefined ? "infestation" : "netBenefit";
  const whole = explanation.whole[figure];
  if (!whole || whole.parts.length === 0) return undefined;
  const what =
    figure === "netBenefit" ? `net benefit of “${requested}”` : "expected damage without a program";
  const bars = barsOf(
    whole,
    explanation.parts.map((part) => partName(part, format)),
    names,
  );
  const ends = [0, ...bars.flatMap(({ start, end }) => [start, end])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const place = (amount: number) => Math.round(((amount - low) / Math.max(1, high - low)) * 1000);
  const money = (amount: number) => format.exactMoney(amount);
  const change = (amount: number) => signed(amount, money);
  const largest = bars.filter(({ isTotal }) => !isTotal).sort((one, other) => sizeOf(other) - sizeOf(one))[0];
  const total = whole.right - whole.left;
  return {
    title:
      total === 0
        ? `The ${what} comes out the same`
        : `The ${what} ${total > 0 ? "rises" : "falls"} by ${money(Math.abs(total))}${largest ? `, most through “${largest.label}”` : ""}`,
    alternative: `Bars from ${money(whole.left)} to ${money(whole.right)}. ${bars
      .filter(({ isTotal }) => !isTotal)
      .map(({ label, start, end }) => `${label}: ${change(end - start)}`)
      .join("; ")}.`,
    tableId: "table-explained",
    zero: place(0),
    rows: bars.map(({ label, start, end, isTotal }) => ({
      label,
      value: isTotal ? money(end) : change(end - start),
      kind: isTotal ? "total" : end === start ? "none" : end > start ? "up" : "down",
      from: place(Math.min(start, end)),
      length: Math.max(leastLength, place(Math.max(start, end)) - place(Math.min(start, end))),
    })),
  };
}

/** A bar of nothing is still seen as a tick. */
const leastLength = 3;

interface Bar {
  readonly label: string;
  readonly start: number;
  readonly end: number;
  readonly isTotal: boolean;
}

const sizeOf = ({ start, end }: Bar) => Math.abs(end - start);

function barsOf({ left, right, parts }: WholeAmounts, labels: readonly string[], names: SideNames): Bar[] {
  let reached = left;
  const changes = parts.map((part, index) => {
    const start = reached;
    reached += part;
    return { label: at(labels, index), start, end: reached, isTotal: false };
  });
  return [
    { label: names.left, start: 0, end: left, isTotal: true },
    ...changes,
    { label: names.right, start: 0, end: right, isTotal: true },
  ];
}

function signed(amount: number, money: (amount: number) => string): string {
  if (amount === 0) return money(0);
  return `${amount < 0 ? "−" : "+"}${money(Math.abs(amount))}`;
}

function table(explanation: Explanation, { format, names }: Telling): TableView | undefined {
  const { parts } = explanation;
  if (parts.length === 0) return undefined;
  const columns = (["netBenefit", "infestation"] as const).flatMap((figure) => {
    const whole = explanation.whole[figure];
    return whole ? [{ figure, whole }] : [];
  });
  const change = (amount: number) => signed(amount, format.exactMoney);
  const cell = ({ whole }: (typeof columns)[number], index: number) => num(change(at(whole.parts, index)));
  const heads = {
    netBenefit: "Net benefit of what is requested",
    infestation: "Damage, no program",
  };
  return {
    id: "table-explained",
    caption: `What each changed input adds on the way from ${names.left} to ${names.right}, present value`,
    head: head("Changed input", ...columns.map(({ figure }) => num(heads[figure]))),
    rows: parts.map((part, index) =>
      row(partName(part, format), ...columns.map((column) => cell(column, index))),
    ),
    total: row("Together", ...columns.map(({ whole }) => num(change(whole.right - whole.left)))),
  };
}

function method({ parts }: Explanation): string {
  const how =
    "Each part is the mean of what the change adds over all orders in which the changes may be made (Shapley value), every study between the two by the whole model; the parts add up.";
  const joined = parts.some(({ groups }) => groups.length > 1)
    ? " Changes named in one line are explained together: with some of them alone the study would contradict itself."
    : "";
  return `${how}${joined}`;
}

/** The sides as they are called in heads of columns: "Revision 3", "Sorrel Bend". */
export interface SideNames {
  readonly left: string;
  readonly right: string;
}
