import { at, sumOf } from "../../lists.js";
import { daysInYear } from "../../model/lake/calendar.js";
import { dailyElevations, dryRuns, exposedBand } from "../../model/lake/levels.js";
import { structureKinds } from "../../model/structures/kinds.js";
import { parseQuantity, type Quantity, QuantityError } from "../../units/quantity.js";
import { dayOfYear } from "../format/fields.js";
import { dayNumber } from "../prepare/to-model.js";
import type { ReadDraft } from "./judged.js";
import type { LevelRecord } from "./levels/level-record.js";
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

/** A study as far as it has come, with its record if that can be read. */
type LevelsDraft = Pick<ReadDraft, "levels"> & { readonly document: unknown };

/** @returns nothing while the study gives no level that can be read */
export function draftedLevels({ document, levels }: LevelsDraft): DraftedLevels | undefined {
  const daily = dailyOf(document, levels);
  if (!daily) return undefined;
  return { daily, ...exposedBand(daily), structures: fixedStructures(document, daily) };
}

function dailyOf(document: unknown, levels: LevelRecord | undefined): number[] | undefined {
  const drawdown = valueAt(document, ["lake", "drawdown"]);
  const points = (Array.isArray(drawdown) ? drawdown : []).flatMap((point: unknown) => {
    const day = dayOfYear.safeParse(valueAt(point, ["on"]));
    const elevation = elevationAt(point, "elevation");
    return day.success && elevation ? [{ dayOfYear: dayNumber(day.data), elevation: elevation.value }] : [];
  });
  if (points.length > 0) return dailyElevations(points.sort((a, b) => a.dayOfYear - b.dayOfYear));
  return levels && meanYear(levels);
}

/** The mean of a record's years, day by day. */
function meanYear({ years }: LevelRecord): number[] {
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
