import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { daysInYear, monthStart, months } from "../../model/lake/calendar.js";
import type { DraftedLevels, DraftedStructure } from "../../study/reading/drafted-levels.js";
import { type Formatter, formatter } from "../words/format.js";
import type { TableView } from "../words/view-types.js";
import { monthLabels } from "./levels-view.js";

/** The lake's year as far as a study gives it, with its structures at their elevations. */
export interface LevelsPicture {
  readonly width: number;
  readonly height: number;
  readonly alternative: string;
  readonly water: string;
  readonly band: { readonly y: string; readonly height: string };
  readonly left: number;
  readonly right: number;
  readonly marks: readonly { readonly y: string; readonly textY: string; readonly label: string }[];
  readonly structures: readonly { readonly y: string; readonly textY: string; readonly name: string }[];
  readonly months: readonly { readonly x: string; readonly label: string }[];
  readonly base: number;
  readonly note: string;
  readonly table: TableView;
}

const size = { width: 710, height: 300, left: 64, right: 470, top: 14, base: 272 };
const mostStructures = 10;
const leastGap = 15;

type Fixed = Pick<DraftedStructure, "name" | "elevation">;

export function levelsPicture(
  { daily, lowest, highest, structures: fixed }: DraftedLevels,
  system: "us" | "si",
): LevelsPicture {
  const format = formatter("USD", system);
  const shown = spread(fixed, mostStructures);
  const all = [lowest, highest, ...shown.map(({ elevation }) => elevation)];
  const bottom = Math.min(...all);
  const scale = (size.base - size.top) / Math.max(Math.max(...all) - bottom, 0.1);
  const y = (elevation: number) => size.base - (elevation - bottom) * scale;
  const words = (elevation: number) => format.quantity(elevation, "elevation");
  const bandText = `between ${words(lowest)} and ${words(highest)}`;
  return {
    ...{ width: size.width, height: size.height, left: size.left, right: size.right, base: size.base },
    alternative: `The lake's level over the year, ${bandText}, with ${shown.length} of ${counted(fixed.length, "structure")} at their elevations; the table below has the figures.`,
    water: daily
      .map((level, day) => `${day === 0 ? "M" : "L"}${dayX(day).toFixed(1)} ${y(level).toFixed(1)}`)
      .join(""),
    band: { y: y(highest).toFixed(1), height: (y(lowest) - y(highest)).toFixed(1) },
    marks: labelled(
      [
        { name: words(highest), elevation: highest },
        { name: words(lowest), elevation: lowest },
      ],
      y,
    ).map(({ name, ...mark }) => ({ ...mark, label: name })),
    structures: labelled(shown, y),
    months: months.map((month) => ({
      x: dayX(monthStart(month) + 15).toFixed(1),
      label: at(monthLabels, month).charAt(0),
    })),
    note: `The lake moves ${bandText}; the shaded band is exposed at its lowest.`,
    table: levelsTable(fixed, format),
  };
}

const dayX = (day: number) => size.left + ((size.right - size.left) * day) / (daysInYear - 1);

/** Labels kept apart, from above to below. */
function labelled(items: readonly Fixed[], y: (elevation: number) => number) {
  let last = Number.NEGATIVE_INFINITY;
  return [...items]
    .sort((a, b) => b.elevation - a.elevation)
    .map(({ name, elevation }) => {
      last = Math.max(y(elevation) + 4, last + leastGap);
      return { name: shortened(name), y: y(elevation).toFixed(1), textY: last.toFixed(1) };
    });
}

/** Longest name that has room beside the picture. */
const longestName = 37;
const shortened = (name: string) => (name.length > longestName ? `${name.slice(0, longestName - 1)}…` : name);

/** So many of the structures, spread from the highest to the lowest. */
function spread(items: readonly Fixed[], most: number): Fixed[] {
  const sorted = [...items].sort((a, b) => b.elevation - a.elevation);
  if (sorted.length <= most) return sorted;
  return Array.from({ length: most }, (_, index) =>
    at(sorted, Math.round((index * (sorted.length - 1)) / (most - 1))),
  );
}

function levelsTable(fixed: readonly DraftedStructure[], format: Formatter): TableView {
  const numeric = (text: string) => ({ text, numeric: true });
  const plain = (text: string) => ({ text, numeric: false });
  return {
    id: "table-levels-drawn",
    caption: "Structures and how long they are exposed",
    head: [
      plain("Structure"),
      numeric(`Elevation, ${format.unit("elevation")}`),
      numeric("Dry days a year"),
      numeric("Longest exposed period, days"),
    ],
    rows: fixed.map(({ name, elevation, dryDays, longestDryRun }) => ({
      cells: [
        plain(name),
        numeric(format.number(elevation, "elevation")),
        numeric(String(dryDays)),
        numeric(String(longestDryRun)),
      ],
    })),
  };
}
