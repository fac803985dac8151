import type { ComparableLakes, LearnedRate, StudyInput, YearlyLine } from "../../model/inputs.js";
import { monthStart } from "../../model/lake/calendar.js";
import { at } from "../../model/lists.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import type { Quantity } from "../../units/quantity.js";
import { monthNames } from "../format/month-names.js";
import type { RecordDocument, ScheduleDocument } from "../format/schedule-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { type LevelRecord, readLevelRecord } from "../reading/level-record.js";
import { type CoverageRun, coverageRuns, type StudyTraffic } from "./traffic.js";

type ByMonthName = Record<(typeof monthNames)[number], Quantity>;

/** A document without its units: quantities become numbers in coherent units, months become lists of twelve. */
export type Plain<T> = T extends Quantity
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

/** Strips quantities of their texts; see `Plain`. */
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

function levelsOf({ drawdown = [], record }: ScheduleDocument, lake: StudyDocument["lake"]) {
  return {
    drawdown: drawdown.map(({ on, elevation }) => ({
      dayOfYear: dayNumber(on),
      elevation: elevation.value,
    })),
    record: record && recordOf(record, lake).years,
  };
}

/** The record of a study that was checked, with what was left out and joined. */
export function recordOf(
  { csv = "", fillGapsUpTo }: RecordDocument,
  lake: StudyDocument["lake"],
): LevelRecord {
  const reading = readLevelRecord(csv, { ...lake, fillGapsUpTo });
  if (reading.record) return reading.record;
  throw new Error(`a record of levels that was not checked: ${reading.problems[0]?.found}`);
}

/** What is read of a study before the model can take it. */
export interface ReadBoats {
  /** Of the vessel classes, in their order. */
  readonly chances: readonly ClassChance[];
  readonly traffic: StudyTraffic | undefined;
  /** What is worked out of the study itself before a chance can be: see `estimateOf`. */
  readonly estimate: ChanceEstimate;
}

/** How the ways to the yearly chance are weighed, and what clean years taught. */
export interface ChanceEstimate extends Pick<ComparableLakes, "weightOfBoats" | "checksLetThrough"> {
  readonly learned: LearnedRate | undefined;
}

type YearlyDocument = Plain<StudyDocument["options"][number]["yearly"][number]>;

/** A yearly line of a study that was checked: a lump, or a count with its price. */
function yearlyLine({ name, group, cost, count, unitCost, unit }: YearlyDocument): YearlyLine {
  if (cost !== undefined) return { name, group, cost };
  if (count !== undefined && unitCost !== undefined) return { name, group, count, unitCost, unit };
  throw new Error(`a yearly line that was not checked: ${name}`);
}

/** The study as the model takes it. */
export function toModel(document: StudyDocument, read: ReadBoats): Omit<StudyInput, "plans"> {
  const { lake, structures, money } = withoutUnits({
    lake: document.lake,
    structures: document.structures,
    money: document.money,
  });
  return {
    lake: {
      ...lake,
      ...levelsOf(document.lake, document.lake),
      otherSchedules: document.lake.otherSchedules.map((schedule) => ({
        id: schedule.id,
        name: schedule.name,
        ...levelsOf(schedule, document.lake),
      })),
      storageValue: lake.storageValue ?? 0,
    },
    structures,
    ...boatsToModel(document, read),
    money: { ...money, fiscalYearStart: monthNames.indexOf(document.money.fiscalYearStart) + 1 },
  };
}

/** The boats and the options alone: what decides the chances. */
export function boatsToModel(
  document: Pick<StudyDocument, "boats" | "options" | "money">,
  { chances, traffic, estimate }: ReadBoats,
): Pick<StudyInput, "boats" | "options"> {
  const coverages = coverageRuns(document.options, traffic?.scaled);
  const { startYear } = document.money;
  const { learned, ...comparable } = estimate;
  const { boats, options } = withoutUnits({ boats: document.boats, options: document.options });
  return {
    boats: {
      launches: boats.launches,
      traffic: traffic?.entered,
      classes: boats.classes.map(({ id, name, share, living, sinceInfestedWater }, index) => ({
        id,
        name,
        share,
        fouled: at(chances, index).fouled,
        living,
        daysSince: sinceInfestedWater,
      })),
      otherWays: boats.otherWays?.map((way) => ({
        ...way,
        fromYear: way.infestedFrom === undefined ? undefined : Math.max(0, way.infestedFrom - startYear),
        sourceChance: way.becomesInfested,
      })),
      comparable: { ...comparable, rate: rateOf(boats.chance) },
      learned,
    },
    options: options.map((option) => ({
      ...option,
      steps: stepsOf(option, coverages),
      yearly: option.yearly.map(yearlyLine),
    })),
  };
}

const rateOf = ({ ownRate, lakes }: Plain<StudyDocument["boats"]["chance"]>): ComparableLakes["rate"] =>
  ownRate ? { own: -Math.log1p(-ownRate.chance) } : { kind: lakes };

/** An option's steps with the coverage that was entered, or that of its open hours. */
function stepsOf({ id, steps }: Plain<StudyDocument["options"]>[number], coverages: readonly CoverageRun[]) {
  if (!steps) return undefined;
  const coverage = steps.coverage ?? coverages.find(({ optionId }) => optionId === id)?.coverage;
  if (coverage === undefined) throw new Error(`an option that was not checked: ${id} has no coverage`);
  return { ...steps, coverage };
}
