import { meanOf, sumOf } from "../../../lists.js";
import { sampleQuantiles } from "../../../model/uncertainty/sample-quantile.js";
import { hourlyRate, type WorkName, workKinds } from "./work-kinds.js";
import { type AmountKey, amountKeys, type WorkLine } from "./work-lines.js";

/** One order: its lines together. */
type Order = Omit<WorkLine, "order" | "year">;

type Amounts = Readonly<Record<AmountKey, number>>;

/** Orders of one structure and kind of work. */
export interface WorkSum {
  readonly structure: string;
  readonly work: WorkName;
  /** The work in words. */
  readonly title: string;
  readonly orders: number;
  readonly amounts: Amounts;
}

/** A value of the orders for an assumption, in hours or in money per hour. */
export interface MeasuredValue {
  readonly id: string;
  readonly mean: number;
  readonly smallest: number;
  /** Half of the span that holds eight in ten orders. */
  readonly halfSpan: number;
  readonly orders: number;
}

export interface WorkSums {
  readonly from: number;
  readonly to: number;
  readonly orders: number;
  readonly amounts: Amounts;
  readonly sums: readonly WorkSum[];
  readonly values: readonly MeasuredValue[];
}

/** @returns undefined where there is no line */
export function workSums(lines: readonly WorkLine[]): WorkSums | undefined {
  if (lines.length === 0) return undefined;
  const orders = ordersOf(lines);
  const years = lines.reduce(
    ({ from, to }, { year }) => ({ from: Math.min(from, year), to: Math.max(to, year) }),
    { from: Number.POSITIVE_INFINITY, to: Number.NEGATIVE_INFINITY },
  );
  const sums = groupsOf(orders, ({ structure, work }) => `${structure} ${work}`).map(
    ([first, ...others]) => ({
      ...{ structure: first.structure, work: first.work, title: workKinds[first.work].title },
      ...{ orders: others.length + 1, amounts: totals([first, ...others]) },
    }),
  );
  return {
    ...years,
    ...{ orders: orders.length, amounts: totals(orders), sums, values: measured(orders) },
  };
}

/** In the order in which they are first met. */
function groupsOf(orders: readonly Order[], key: (order: Order) => string): [Order, ...Order[]][] {
  const groups = new Map<string, [Order, ...Order[]]>();
  for (const order of orders) {
    const known = groups.get(key(order));
    if (known) known.push(order);
    else groups.set(key(order), [order]);
  }
  return [...groups.values()];
}

/** Lines of one number, structure and work are one order. */
function ordersOf(lines: readonly WorkLine[]): Order[] {
  const orders = new Map<string, Order>();
  for (const { order, structure, work, amounts } of lines) {
    const key = `${structure} ${work} ${order}`;
    const before = orders.get(key)?.amounts ?? {};
    orders.set(key, { structure, work, amounts: added(before, amounts) });
  }
  return [...orders.values()];
}

function added(one: Order["amounts"], other: Order["amounts"]): Order["amounts"] {
  const sum: Partial<Record<AmountKey, number>> = { ...one };
  for (const key of amountKeys) {
    const more = other[key];
    if (more !== undefined) sum[key] = (sum[key] ?? 0) + more;
  }
  return sum;
}

function totals(orders: readonly Order[]): Amounts {
  const sum = { hours: 0, laborCost: 0, parts: 0, outage: 0, energy: 0 };
  for (const { amounts } of orders) for (const key of amountKeys) sum[key] += amounts[key] ?? 0;
  return sum;
}

/** Of the structures of the study alone. */
function measured(all: readonly Order[]): MeasuredValue[] {
  const orders = all.filter(({ structure }) => structure !== "other");
  const paid = orders.flatMap(({ amounts: { hours = 0, laborCost = 0 } }) =>
    hours > 0 && laborCost > 0 ? [{ hours, laborCost }] : [],
  );
  const rates = paid.map(({ hours, laborCost }) => laborCost / hours);
  const [cost, time] = [sumOf(paid.map((each) => each.laborCost)), sumOf(paid.map((each) => each.hours))];
  const byKind = groupsOf(orders, ({ work }) => work).flatMap((each) => {
    const { hours, outage } = workKinds[each[0].work];
    return [
      ...measuredValue(
        hours,
        amountsOf(each, "hours").filter((time) => time > 0),
      ),
      ...measuredValue(outage, amountsOf(each, "outage")),
    ];
  });
  return [...measuredValue(hourlyRate, rates, cost / time), ...byKind];
}

const amountsOf = (orders: readonly Order[], key: AmountKey): number[] =>
  orders.flatMap(({ amounts }) => amounts[key] ?? []);

const endShare = 0.1;

/** The span of orders is wider than what is uncertain of their mean: mussels are other work than what is cleaned today. */
function measuredValue(
  id: string | undefined,
  values: readonly number[],
  mean = meanOf(values),
): MeasuredValue[] {
  if (id === undefined || values.length === 0) return [];
  const [smallest = mean, low = mean, high = mean] = sampleQuantiles(values, [0, endShare, 1 - endShare]);
  return [{ id, mean, smallest, halfSpan: (high - low) / 2, orders: values.length }];
}
