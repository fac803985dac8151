import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { daysInYear, months } from "../../model/lake/calendar.js";
import type { DryRun } from "../../model/lake/levels.js";
import { dayText } from "../../study/reading/level-dates.js";
import type { LevelRecord } from "../../study/reading/levels/level-record.js";
import type { TracedLevels } from "../../study/traced/traced-levels.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin, oneDecimal } from "../words/format.js";
import { fixedPlaces, type Place } from "../words/places.js";
import { head, num, type RowView, row, type TableView } from "../words/view-types.js";

export const monthLabels = [
  "Jan",
  "Feb",
  "Mar",
  "Apr",
  "May",
  "Jun",
  "Jul",
  "Aug",
  "Sep",
  "Oct",
  "Nov",
  "Dec",
];

/** Where the lake's own levels come from, in the words of a source line. */
export function levelsSource({ run }: ReportContext): string {
  const { record } = run.document.lake;
  return record ? `Record of levels of the study (${record.origin}).` : "Drawdown schedule of the study.";
}

/** Between which levels the lake moves, what that lays bare, and what the levels rest on. */
export function levelFacts(context: ReportContext): string[] {
  const { comparison, traced, format } = context;
  const { band, exposedArea, storageInBand } = comparison.lake;
  const { record } = traced.levels;
  const bare = `${format.quantity(exposedArea, "landArea")} of lakebed and moves ${format.quantity(storageInBand, "volume")} of storage`;
  const highest = format.quantity(band.highest, "elevation");
  const lowest = format.quantity(band.lowest, "elevation");
  if (!record) {
    return [
      `The operating schedule moves the lake between ${highest} and ${lowest}. That exposes ${bare}.`,
      "Structures in this band are out of the water part of the year, where drying and frost kill mussels; those below it, or floating, never are.",
    ];
  }
  return [
    recordFacts(record, format),
    `Over these years the lake stood between ${highest} and ${lowest}. That exposes ${bare}.`,
    "Structures in this band are out of the water in part of some years or of all, where drying and frost kill mussels; those below it, or floating, never are.",
  ];
}

function recordFacts(
  { form, years, leftOut, filled, origin, above }: NonNullable<TracedLevels["record"]>,
  format: ReportContext["format"],
): string {
  const means = form === "monthly" ? " Its monthly means stand at mid-month and are joined linearly." : "";
  const out =
    leftOut.length === 0
      ? ""
      : `Left out because the record does not cover the whole year: ${leftOut.join(", ")}.`;
  const joined =
    filled.length === 0
      ? ""
      : `Gaps were joined linearly: ${filled.map(({ label, days }) => `${counted(days, "day")} in ${label}`).join(", ")}.`;
  const floods = above
    ? `On ${counted(above.days, "day")} of them the lake stood above full pool, at most ${format.quantity(above.highest, "elevation")} in ${above.label}; these levels are kept.`
    : "";
  const weight =
    years.length === 1
      ? "Its one complete year stands for every year to come."
      : "Each year counts as one possible operating year, all equally likely: a plan must be possible and keep its limits in every one of them, and costs are the mean over them.";
  return `The levels are a record of ${yearsText(years)} (${origin}).${means} ${[out, joined, floods, weight].filter(Boolean).join(" ")}`;
}

function yearsText(years: LevelRecord["years"]): string {
  const [first, last] = [years[0]?.label, years.at(-1)?.label];
  return years.length === 1 ? `one year, ${first}` : `${years.length} years, ${first} to ${last}`;
}

/** Levels and temperatures by month; with a record, the lowest and highest monthly mean of any year as well. */
export function levelsTable(context: ReportContext): TableView {
  const { comparison, traced, format, run } = context;
  const { years } = comparison.lake;
  const { lake } = comparison.input;
  const unit = format.unit("elevation");
  const level = (elevation: number) => num(oneDecimal(format.display(elevation, "elevation")));
  const warmth = (temperature: number) => num(oneDecimal(format.display(temperature, "temperature")));
  const spread = years.length > 1;
  return {
    id: "table-levels",
    caption: `Mean water level and temperatures of ${run.document.lake.name}`,
    head: head(
      "Month",
      num(`Level, ${unit}`),
      ...(spread ? [num(`Lowest year, ${unit}`), num(`Highest year, ${unit}`)] : []),
      num(`Surface water, ${format.unit("temperature")}`),
      num(`Air, ${format.unit("temperature")}`),
    ),
    rows: months.map((month) => {
      const each = traced.levels.monthlyByYear.map((year) => at(year, month));
      return row(
        at(monthLabels, month),
        level(at(traced.levels.monthlyMeans, month)),
        ...(spread ? [level(Math.min(...each)), level(Math.max(...each))] : []),
        warmth(at(lake.surfaceTemperature, month)),
        warmth(at(lake.airTemperature, month)),
      );
    }),
    note: `${spread ? `Means over the ${counted(years.length, "year")} of the record` : levelsNote(context)}; temperatures entered by staff.`,
    compact: true,
  };
}

const levelsNote = ({ run }: ReportContext) =>
  run.document.lake.record
    ? "Levels of the one complete year of the record"
    : "Levels of the schedule, joined linearly";

const mostRows = 40;

/** How long each elevation in the band hangs dry; absent where none does. */
export function dryRunsTable(context: ReportContext): TableView | undefined {
  const { years, band } = context.comparison.lake;
  const places = fixedPlaces(context, { withRamps: true }).filter(({ elevation }) => elevation > band.lowest);
  if (places.length === 0) return undefined;
  const spread = years.length > 1;
  const left = places.length - mostRows;
  return {
    id: "table-dry-runs",
    caption: spread
      ? `How long structures are exposed, in the ${counted(years.length, "year")} of the record`
      : "How long structures are exposed in a year",
    head: head(
      "Structure",
      num(`Elevation, ${context.format.unit("elevation")}`),
      num(spread ? "Days exposed a year, mean" : "Days exposed a year"),
      ...(spread ? [num("Fewest and most")] : []),
      num("Longest period, days"),
      "From and to",
    ),
    rows: places.slice(0, mostRows).map((place) => dryRow(place, context)),
    note: `A period that spans New Year counts as one. What is not listed is always under water or floats.${left > 0 ? ` ${left} more elevations are left out.` : ""}`,
    compact: true,
  };
}

function dryRow({ names, elevation }: Place, { traced, format }: ReportContext): RowView {
  const { days, meanDays, longest } = traced.levels.dryAt(elevation);
  return row(
    listedWithin(names, 3),
    num(oneDecimal(format.display(elevation, "elevation"))),
    num(String(Math.round(meanDays))),
    ...(days.length > 1 ? [num(`${Math.min(...days)}–${Math.max(...days)}`)] : []),
    num(String(longest.run.days)),
    `${datesOf(longest.run)}${longest.label === "" ? "" : ` ${longest.label}`}`,
  );
}

function datesOf({ startDay, days }: DryRun): string {
  if (days >= daysInYear) return "all year";
  return `${dayText(startDay)} to ${dayText((startDay + days - 1) % daysInYear)}`;
}
