import { at } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import { isControl } from "../../model/infestation-cost.js";
import type { CostLine } from "../../model/money/line.js";
import { type PriceGroup, priceGroupOf } from "../../model/money/price-group.js";
import type { ScheduleResult } from "../../model/schedules.js";
import { type LineRate, type RateReading, rateOf } from "./line-rates.js";
import { isCounted } from "./named-lines.js";

/** A cost line of a structure, of one name, kind and payer, in each year of an infestation. */
export interface YearlyLine {
  readonly structureName: string;
  /** The last that occurs. */
  readonly sample: CostLine;
  /** Losses count before mussels are detected too, work and protection only after that. */
  readonly part: "losses" | "work";
  /** Absent where its price goes with prices in general. */
  readonly rising: PriceGroup | undefined;
  readonly rate: LineRate;
  /** By year of the infestation; nothing in years without it. */
  readonly years: ReadonlyArray<{ readonly quantity: number; readonly cents: number } | undefined>;
}

/**
 * Every line of an infestation under a schedule of levels. Where a unit rate is not the same in all years, quantities
 * are told in units of the rate of the last.
 */
export function yearlyLines(
  { structures }: Pick<ScheduleResult, "structures">,
  comparison: Pick<Comparison, "input" | "rises">,
  reading: RateReading,
): YearlyLine[] {
  const { horizon } = comparison.input.money;
  return structures.flatMap(({ structure, years }) =>
    occurrences(years.slice(-horizon)).map((lines): YearlyLine => {
      const sample = lines.findLast((line) => line !== undefined && line.unitRate !== 0) ?? anyOf(lines);
      return {
        structureName: structure.name,
        sample,
        part: isControl(sample) ? "work" : "losses",
        rising: risingGroup(sample, comparison),
        rate: rateOf(sample, hasOneRate(lines, sample), structure, reading),
        years: lines.map((line) => line && { quantity: inUnitsOf(sample, line), cents: line.cents }),
      };
    }),
  );
}

/** What tells the group of a line. */
export type GroupedLine = Parameters<typeof priceGroupOf>[0];

/** Group of a line whose price rises otherwise than prices in general. */
export function risingGroup(line: GroupedLine, { rises }: Pick<Comparison, "rises">): PriceGroup | undefined {
  const group = priceGroupOf(line);
  return rises.has(group) ? group : undefined;
}

type Occurrences = ReadonlyArray<CostLine | undefined>;

function anyOf(lines: Occurrences): CostLine {
  const found = lines.find((line) => line !== undefined);
  if (!found) throw new Error("a line that occurs in no year");
  return found;
}

/** Lines that belong together, each with its place in every year; a second of the same kind in a year stands by itself. */
function occurrences(years: ReadonlyArray<readonly CostLine[]>): Occurrences[] {
  const rows = new Map<string, (CostLine | undefined)[]>();
  years.forEach((lines, year) => {
    const met = new Map<string, number>();
    for (const line of lines.filter(isCounted)) {
      const { what, type, bearer, quantityKind } = line;
      const kind = JSON.stringify([what, type, bearer, quantityKind]);
      const before = met.get(kind) ?? 0;
      met.set(kind, before + 1);
      const key = `${before} ${kind}`;
      const row = rows.get(key) ?? years.map(() => undefined);
      row[year] = line;
      rows.set(key, row);
    }
  });
  return [...rows.values()];
}

/** How far two rates that mean the same may lie apart by rounding, as a share. */
const roundingError = 1e-9;

const isSameRate = (one: number, other: number) => Math.abs(one - other) <= roundingError * Math.abs(other);

const hasOneRate = (lines: Occurrences, { unitRate }: CostLine) =>
  lines.every((line) => line === undefined || isSameRate(line.unitRate, unitRate));

const inUnitsOf = (sample: CostLine, line: CostLine) =>
  isSameRate(line.unitRate, sample.unitRate) || sample.unitRate === 0
    ? line.quantity
    : (line.quantity * line.unitRate) / sample.unitRate;

/** Lines of all schedules that options follow, the lake's own levels first. */
export function linesBySchedule(
  comparison: Comparison,
  reading: RateReading,
): ReadonlyMap<ScheduleResult, readonly YearlyLine[]> {
  const followed = new Set(
    [comparison.baseline, ...comparison.options.map(({ result }) => result)].map(({ schedule }) => schedule),
  );
  const used = [
    at(comparison.schedules, 0),
    ...[...followed].filter((each) => each !== comparison.schedules[0]),
  ];
  return new Map(used.map((schedule) => [schedule, yearlyLines(schedule, comparison, reading)]));
}
