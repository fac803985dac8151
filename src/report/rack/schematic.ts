import { counted } from "../../counted.js";
import { at, sumOf } from "../../lists.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { printedWidth, significant, wrapped } from "../words/format.js";
import { leaderPlaces } from "./schematic-places.js";

/** Structures against elevation, each with the layer that would grow on it; geometry in the units of the drawing. */
export interface SchematicView {
  readonly title: string;
  readonly alternative: string;
  readonly width: number;
  readonly height: number;
  /** Edges of the water and of the band that the year exposes. */
  readonly water: { readonly top: number; readonly low: number; readonly height: number };
  readonly band: { readonly y: number; readonly height: number };
  readonly axisX: number;
  readonly ticks: ReadonlyArray<{ readonly y: number; readonly text: string }>;
  readonly marks: readonly Mark[];
  readonly note: string;
}

interface Mark {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly floats: boolean;
  /** The layer, drawn as a dark edge to its own scale. */
  readonly layer: number;
  readonly edge: number;
  readonly labelX: number;
  readonly labelY: number;
  readonly leaderY: number;
  /** A long name in several lines. */
  readonly name: ReadonlyArray<{ readonly y: number; readonly text: string }>;
  readonly detail: string;
  readonly detailY: number;
}

const width = 640;
const axisX = 58;
const firstX = 90;
const lastX = 300;
const labelX = 330;
const top = 14;
const labelStep = 26;
const most = 12;
/** Of all labels together: the page has room for the costs below them as well. */
const tallest = 318;
/** Letters of a line of a name, and how far its lines stand apart. */
const lineLetters = 48;
const nameStep = 12;
/** Width of the thickest layer, and depth in which a floating structure is drawn. */
const thickest = 16;
const floatDepth = 5;

interface Placed {
  readonly name: string;
  readonly high: number;
  readonly low: number;
  readonly floats: boolean;
  readonly thickness: number;
  readonly cost: number;
}

/** Absent where no structure has an elevation. */
export function schematicView(context: ReportContext): SchematicView | undefined {
  const { comparison, traced, format } = context;
  const { band } = comparison.lake;
  const all = traced.structures.flatMap((structure) => placedOf(structure, band));
  if (all.length === 0) return undefined;
  const placed = drawnOf(all).sort((one, other) => other.high - one.high);
  const names = placed.map(({ name }) => wrapped(name, lineLetters, printedWidth));
  const extra = names.map((lines) => (lines.length - 1) * nameStep);
  const height = Math.max(220, placed.length * labelStep + sumOf(extra) + 2 * top);
  const scale = scaleOf(placed, band, height);
  const leaders = placed.map((each, index) => {
    const label = top + 6 + index * labelStep + sumOf(extra.slice(0, index));
    return { from: leaderOf(each, scale), label };
  });
  const places = leaderPlaces(leaders);
  const largest = Math.max(...placed.map(({ thickness }) => thickness));
  const counts = hangingCounts(all, band.lowest);
  return {
    title: counts,
    alternative: `Structures against elevation. The lake lies between ${format.quantity(band.lowest, "elevation")} and ${format.quantity(band.highest, "elevation")}. ${placed.map((each) => `${each.name}: ${detailOf(each, context)}`).join(". ")}.`,
    width,
    height,
    water: { top: scale(band.highest), low: scale(band.lowest), height: height - scale(band.lowest) },
    band: { y: scale(band.highest), height: Math.max(1, scale(band.lowest) - scale(band.highest)) },
    axisX,
    ticks: [band.highest, band.lowest, ...extremes(placed, band)].map((elevation) => ({
      y: scale(elevation),
      text: format.number(elevation, "elevation"),
    })),
    marks: placed.map((each, index) =>
      markOf(each, {
        x: placeX(at(places, index), placed.length),
        labelY: at(leaders, index).label,
        lines: at(names, index),
        scale,
        largest,
        context,
      }),
    ),
    note: `Elevation in ${format.unit("elevation")}. Shaded: the band that the year exposes. Dark edge: mussel layer if never cleaned, at most ${layerText(largest, format)}.${all.length > placed.length ? ` Drawn are the ${placed.length} that cost most of ${all.length}; the register has all.` : ""}`,
  };
}

/** The most expensive for which a sheet has room beside its text, long names in several lines. */
function drawnOf(all: readonly Placed[]): Placed[] {
  const byCost = [...all].sort((one, other) => other.cost - one.cost).slice(0, most);
  const heights = byCost.map(
    ({ name }) => labelStep + (wrapped(name, lineLetters, printedWidth).length - 1) * nameStep,
  );
  const beyond = heights.findIndex((_, index) => sumOf(heights.slice(0, index + 1)) > tallest);
  return beyond === -1 ? byCost : byCost.slice(0, Math.max(1, beyond));
}

function placedOf(traced: TracedStructure, band: { readonly highest: number }): Placed[] {
  const { structure, components } = traced.result;
  const reach = reachOf(traced, band);
  if (!reach) return [];
  const thickness = Math.max(0, ...components.map(({ untouchedLayer }) => untouchedLayer.thickness));
  return [{ name: structure.name, ...reach, thickness, cost: traced.cost.last }];
}

/** What floats is drawn on the highest water. */
function reachOf(
  { reach }: TracedStructure,
  { highest }: { readonly highest: number },
): Pick<Placed, "high" | "low" | "floats"> | undefined {
  return reach?.floats ? { ...reach, high: highest, low: highest } : reach;
}

/** Elevation to height in the drawing, from the highest to the lowest of the structures and the band. */
function scaleOf(
  placed: readonly Placed[],
  band: { readonly lowest: number; readonly highest: number },
  height: number,
): Scale {
  const highest = Math.max(band.highest, ...placed.map(({ high }) => high));
  const lowest = Math.min(band.lowest, ...placed.map(({ low }) => low));
  const span = Math.max(highest - lowest, 1);
  return (elevation) => top + ((highest - elevation) / span) * (height - 2 * top);
}

/** Highest and lowest structure beyond the band, for the axis. */
function extremes(placed: readonly Placed[], band: { readonly lowest: number; readonly highest: number }) {
  const lowest = Math.min(...placed.map(({ low }) => low));
  const highest = Math.max(...placed.map(({ high }) => high));
  const room = (band.highest - band.lowest) / 8;
  return [
    ...(lowest < band.lowest - room ? [lowest] : []),
    ...(highest > band.highest + room ? [highest] : []),
  ];
}

type Scale = (elevation: number) => number;

/** Upper and lower end of a structure in the drawing. */
function endsOf({ high, low }: Placed, scale: Scale) {
  const upper = scale(high);
  return { upper, lower: Math.max(scale(low), upper + floatDepth) };
}

function leaderOf(each: Placed, scale: Scale): number {
  const { upper, lower } = endsOf(each, scale);
  return Math.min((upper + lower) / 2, upper + labelStep / 2);
}

/** @param place 0 nearest to the labels */
function placeX(place: number, count: number): number {
  const step = count > 1 ? (lastX - firstX) / (count - 1) : 0;
  return lastX - step * place;
}

interface Drawn {
  readonly x: number;
  readonly labelY: number;
  /** Of its name. */
  readonly lines: readonly string[];
  readonly scale: Scale;
  readonly largest: number;
  readonly context: ReportContext;
}

function markOf(each: Placed, { x, labelY, lines, scale, largest, context }: Drawn): Mark {
  const { upper, lower } = endsOf(each, scale);
  const layer = largest > 0 ? (each.thickness / largest) * thickest : 0;
  return {
    x,
    top: upper,
    bottom: lower,
    floats: each.floats,
    layer,
    edge: x + 6,
    labelX,
    labelY,
    leaderY: leaderOf(each, scale),
    name: lines.map((text, line) => ({ y: labelY + 1 + line * nameStep, text })),
    detail: detailOf(each, context),
    detailY: labelY + 1 + (lines.length - 1) * nameStep + 11,
  };
}

function detailOf({ high, low, floats, thickness }: Placed, { comparison, format }: ReportContext): string {
  const { lowest } = comparison.lake.band;
  const where = floats
    ? "floats, never exposed"
    : high === low
      ? `${format.quantity(high, "elevation")}, ${high > lowest ? "exposed part of the year" : "never exposed"}`
      : `${format.number(low, "elevation")}–${format.quantity(high, "elevation")}, ${low > lowest ? "exposed part of the year" : "foot never exposed"}`;
  return thickness > 0 ? `${where}; layer ${layerText(thickness, format)}` : where;
}

/** In the study's units; what is thinner than a young shell is told as that. */
const leastLayer = 1e-4;
const layerText = (thickness: number, format: ReportContext["format"]) =>
  `${thickness < leastLayer ? "under " : ""}${significant(format.display(Math.max(thickness, leastLayer), "smallLength"), 2)} ${format.unit("smallLength")}`;

function hangingCounts(all: readonly Placed[], lowest: number): string {
  const dry = all.filter(({ low, floats }) => !floats && low > lowest).length;
  const name = (count: number) => counted(count, "structure");
  const verb = (count: number, one: string, several: string) => (count === 1 ? one : several);
  if (dry === 0) return `None of ${name(all.length)} is exposed: mussels can live on all of them all year`;
  const wet = all.length - dry;
  if (wet === 0) return `All ${name(all.length)} are exposed part of the year`;
  return `${name(dry)} ${verb(dry, "is", "are")} exposed part of the year; ${wet} ${verb(wet, "stays", "stay")} in the water or ${verb(wet, "floats", "float")}`;
}
