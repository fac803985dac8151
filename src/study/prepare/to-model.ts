import { at } from "../../lists.js";
import type { ComparableLakes, LearnedRate, StudyInput, YearlyLine } from "../../model/inputs.js";
import { monthStart } from "../../model/lake/calendar.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import { kindOf, type Structure } from "../../model/structures/kinds.js";
import type { Fittings } from "../../model/structures/raw-water/fittings.js";
import type { Quantity } from "../../units/quantity.js";
import { monthNames } from "../format/month-names.js";
import type { ReadBoats, WithLevels } from "../format/read-records.js";
import type { ScheduleDocument } from "../format/schedule-schema.js";
import type { StudyDocument } from "../format/schema.js";
import type { SoundYearly } from "../format/sound-options.js";
import { coverageOf, type StudyTraffic } from "./traffic.js";

type ByMonthName = Record<(typeof monthNames)[number], Quantity>;

/** A document without its units: quantities become numbers in coherent units, months become lists of twelve. */
type Plain<T> = T extends Quantity
  ? number
  : T extends ByMonthName | { all: Quantity }
    ? number[]
    : T extends readonly (infer Item)[]
      ? Plain<Item>[]
      : T extends object
        ? { [Key in keyof T]: Plain<T[Key]> }
        : T;

function isQuantity(value: object): value is Quantity {
  return "text" in value && "dimension" in value && "value" in value;
}

function isByMonth(value: object): value is ByMonthName {
  return monthNames.every((name) => name in value);
}

function isForAllMonths(value: object): value is { all: Quantity } {
  return "all" in value && typeof value.all === "object" && value.all !== null && isQuantity(value.all);
}

/** Reduces quantities to numbers; see `Plain`. */
export function withoutUnits<T>(value: T): Plain<T>;
export function withoutUnits(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map((item: unknown) => withoutUnits(item));
  if (isQuantity(value)) return value.value;
  if (isByMonth(value)) return monthNames.map((name) => value[name].value);
  if (isForAllMonths(value)) return monthNames.map(() => value.all.value);
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withoutUnits<unknown>(item)]));
}

/** Day of the year of "MM-DD", 0 = 1 January. */
export function dayNumber(on: string): number {
  const [month = 1, day = 1] = on.split("-").map(Number);
  return monthStart(month - 1) + day - 1;
}

export function levelsOf({ drawdown = [], record }: WithLevels<ScheduleDocument>) {
  return {
    drawdown: drawdown.map(({ on, elevation }) => ({
      dayOfYear: dayNumber(on),
      elevation: elevation.value,
    })),
    record: record?.levels.years,
  };
}

/** Boat data prepared for the model. */
export interface PreparedBoats {
  /** Of the vessel classes, in order. */
  readonly chances: readonly ClassChance[];
  readonly traffic: StudyTraffic | undefined;
  /** What is worked out of the study itself before a chance can be: see `estimateOf`. */
  readonly estimate: ChanceEstimate;
}

/** How the ways to the yearly chance are weighed, and what clean years taught. */
export interface ChanceEstimate extends Pick<ComparableLakes, "weightOfBoats" | "checksLetThrough"> {
  readonly learned: LearnedRate | undefined;
}

/** A lump sum, or a count with its unit price. */
function yearlyLine({ name, group, unit, ...amount }: Plain<SoundYearly>): YearlyLine {
  if (amount.cost !== undefined) return { name, group, cost: amount.cost };
  return { name, group, count: amount.count, unitCost: amount.unitCost, unit };
}

/** The study as input of the model. */
export function toModel(document: StudyDocument, boats: PreparedBoats): Omit<StudyInput, "plans"> {
  const { record, otherSchedules, ...others } = document.lake;
  const { lake, structures, money } = withoutUnits({
    lake: others,
    structures: document.structures,
    money: document.money,
  });
  return {
    lake: {
      ...lake,
      ...levelsOf({ drawdown: others.drawdown, record }),
      otherSchedules: otherSchedules.map(({ id, name, ...levels }) => ({ id, name, ...levelsOf(levels) })),
      storageValue: lake.storageValue ?? 0,
    },
    structures: withUpstream(structures),
    ...boatsToModel(document, boats),
    money: { ...money, fiscalYearStart: monthNames.indexOf(document.money.fiscalYearStart) + 1 },
  };
}

/** Lines that are tapped from another structure get its walls. */
export function withUpstream(structures: readonly Structure[]): Structure[] {
  const wallsOf = (id: string) => {
    const upstream = structures.find((each) => each.id === id);
    return upstream && kindOf(upstream).walls?.(upstream);
  };
  const tapped = <Line extends Fittings>(line: Line): Line =>
    line.upstream === undefined ? line : { ...line, upstreamWalls: wallsOf(line.upstream) };
  return structures.map((each) => {
    if ("coolingWater" in each) return { ...each, coolingWater: tapped(each.coolingWater) };
    return "upstream" in each ? tapped(each) : each;
  });
}

/** Only boats and options, which determine the chances. */
const boatsToModel = (
  document: Pick<StudyDocument, "boats" | "options" | "money">,
  boats: PreparedBoats,
): Pick<StudyInput, "boats" | "options"> => ({
  boats: boatsOf(plainBoats(document.boats), document.money, boats),
  options: document.options.map((option) => optionToModel(option, document.boats, boats.traffic)),
});

/** What the boats of a study say beside their traffic and records. */
export type PlainBoats = Plain<Pick<ReadBoats, "launches" | "classes" | "chance" | "otherWays">>;

export const plainBoats = ({ launches, classes, chance, otherWays }: ReadBoats): PlainBoats =>
  withoutUnits({ launches, classes, chance, otherWays });

/** The boats without the options, whose coverage follows from traffic alone. */
export function boatsOf(
  { launches, classes, chance, otherWays }: PlainBoats,
  { startYear }: Pick<StudyDocument["money"], "startYear">,
  { chances, traffic, estimate }: PreparedBoats,
): StudyInput["boats"] {
  const { learned, ...comparable } = estimate;
  return {
    launches,
    traffic: traffic?.entered,
    classes: classes.map(({ id, name, share, living, sinceInfestedWater: daysSince }, index) => {
      const { fouled } = at(chances, index);
      return { id, name, share, fouled, living, daysSince };
    }),
    otherWays: otherWays?.map((way) => {
      const fromYear = way.infestedFrom === undefined ? undefined : Math.max(0, way.infestedFrom - startYear);
      return { fromYear, sourceChance: way.becomesInfested, ...way };
    }),
    comparable: { rate: rateOf(chance), ...comparable },
    learned,
  };
}

const plainGroups = new WeakMap<object, unknown>();

/** As `withoutUnits`, once for each group: where the ends of ranges are tried, most groups stay the same object. */
export function plainOnce<T extends object>(group: T): Plain<T> {
  const known = plainGroups.get(group);
  if (known !== undefined) return known as Plain<T>;
  const plain = withoutUnits(group);
  plainGroups.set(group, plain);
  return plain;
}

function optionToModel(
  option: StudyDocument["options"][number],
  boats: ReadBoats,
  traffic: StudyTraffic | undefined,
) {
  const { hours, steps, ...others } = option;
  const { yearly, ...plain } = withoutUnits(others);
  return { ...plain, steps: stepsOf(option, boats, traffic), yearly: yearly.map(yearlyLine) };
}

const rateOf = ({ ownRate, lakes }: PlainBoats["chance"]): ComparableLakes["rate"] =>
  ownRate ? { own: -Math.log1p(-ownRate.chance) } : { kind: lakes };

/** An option's steps with the coverage that was entered, or that of its open hours. */
function stepsOf(
  { steps, hours }: StudyDocument["options"][number],
  boats: ReadBoats,
  traffic: StudyTraffic | undefined,
) {
  if (!steps) return undefined;
  const coverage = hours ? coverageOf(hours, boats, traffic) : steps.coverage.value;
  return { ...withoutUnits(steps), coverage };
}
