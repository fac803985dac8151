import { at, sumOf } from "../../lists.js";
import { daysInYear } from "../../model/lake/calendar.js";
import { dailyElevations, dryRuns, exposedBand } from "../../model/lake/levels.js";
import { structureKinds } from "../../model/structures/kinds.js";
import { parseQuantity, type Quantity, QuantityError } from "../../units/quantity.js";
import { dayOfYear } from "../format/fields.js";
import { dayNumber } from "../prepare/to-model.js";
import { readLevelRecord } from "./level-record.js";
import { valueAt } from "./problems.js";

/** The lake's year as far as an unfinished study gives it. */
export interface DraftedLevels {
  readonly daily: readonly number[];
  readonly lowest: number;
  readonly highest: number;
  readonly structures: readonly DraftedStructure[];
}

/** A structure that stands at an elevation, or a ramp by its foot. */
export interface DraftedStructure {
  readonly name: string;
  readonly elevation: number;
  readonly dryDays: number;
  readonly longestDryRun: number;
}

/** @returns nothing while the study gives no level that can be read */
export function draftedLevels(document: unknown): DraftedLevels | undefined {
  const daily = dailyOf(document);
  if (!daily) return undefined;
  return { daily, ...exposedBand(daily), structures: fixedStructures(document, daily) };
}

function dailyOf(document: unknown): number[] | undefined {
  const drawdown = valueAt(document, ["lake", "drawdown"]);
  const points = (Array.isArray(drawdown) ? drawdown : []).flatMap((point: unknown) => {
    const day = dayOfYear.safeParse(valueAt(point, ["on"]));
    const elevation = elevationAt(point, "elevation");
    return day.success && elevation ? [{ dayOfYear: dayNumber(day.data), elevation: elevation.value }] : [];
  });
  if (points.length > 0) return dailyElevations(points.sort((a, b) => a.dayOfYear - b.dayOfYear));
  return recordMean(valueAt(document, ["lake"]));
}

/** The mean of a record's years, day by day. */
function recordMean(lake: unknown): number[] | undefined {
  const csv = valueAt(lake, ["record", "csv"]);
  const gaps = valueAt(lake, ["record", "fillGapsUpTo"]);
  const minimumElevation = elevationAt(lake, "minimumElevation");
  const maximumElevation = elevationAt(lake, "maximumElevation");
  if (typeof csv !== "string" || !minimumElevation || !maximumElevation) return undefined;
  const fillGapsUpTo = typeof gaps === "number" ? gaps : 0;
  const { record } = readLevelRecord(csv, { fillGapsUpTo, minimumElevation, maximumElevation });
  if (!record) return undefined;
  const { years } = record;
  return Array.from({ length: daysInYear }, (_, day) => {
    return years.reduce((total, { daily }) => total + at(daily, day), 0) / years.length;
  });
}

function fixedStructures(document: unknown, daily: readonly number[]): DraftedStructure[] {
  const list = valueAt(document, ["structures"]);
  return (Array.isArray(list) ? list : []).flatMap((structure: unknown) => {
    const given = valueAt(structure, ["name"]);
    const name = typeof given === "string" ? given : "Structure without a name";
    const kind = structureKinds.find((each) => each.kind === valueAt(structure, ["kind"]));
    const field = kind?.lowestField ?? "elevation";
    const elevation = elevationAt(structure, field);
    if (!elevation) return [];
    const runs = dryRuns(daily, elevation.value).map(({ days }) => days);
    return [
      {
        name: field === "elevation" ? name : `${name}, foot`,
        elevation: elevation.value,
        dryDays: sumOf(runs),
        longestDryRun: Math.max(0, ...runs),
      },
    ];
  });
}

function elevationAt(group: unknown, key: string): Quantity | undefined {
  const typed = valueAt(group, [key]);
  if (typeof typed !== "string") return undefined;
  try {
    return parseQuantity(typed, "elevation");
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
