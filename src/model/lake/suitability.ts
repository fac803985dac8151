import { type Assumed, recorder } from "../assumed.js";
import type { AssumptionId, RegisteredId } from "../register/register.js";
import type { Chemistry, Lake } from "./lake.js";
import {
  type BoundIds,
  type Bounds,
  calciumBounds,
  chemistryBounds,
  temperatureBounds,
} from "./suitability-ids.js";

type SuitabilityClass = "none" | "very low" | "low" | "moderate" | "high";

interface VariableClass {
  readonly variable: string;
  readonly value: number;
  readonly unit: string;
  readonly class: SuitabilityClass;
  readonly weight: number;
}

export interface Suitability {
  /** Weight of the limiting variable, 0 to 1. */
  readonly weight: number;
  readonly limiting: VariableClass;
  readonly variables: readonly VariableClass[];
  /** What the other published calcium scheme would say. */
  readonly otherCalciumScheme: VariableClass;
  readonly assumptionIds: readonly AssumptionId[];
}

const weightIds = {
  none: "suitability.weight.none",
  "very low": "suitability.weight.very-low",
  low: "suitability.weight.low",
  moderate: "suitability.weight.moderate",
  high: "suitability.weight.high",
} as const satisfies Record<SuitabilityClass, RegisteredId>;

/**
 * Habitat suitability: each variable falls in a published class and the lowest weight rules,
 * w = min(w1, w2, …). A value on a bound belongs to the better class. Just short of it the weight leads from one class
 * to the next over a part of a class, so that no measuring error turns the answer. Heat counts where the lake stays
 * coolest in its warmest month, cold at the surface.
 * Below the lowest class of calcium, and of pH, alkalinity and hardness which go with it, quagga is "very low",
 * not impossible (Davis and others 2015). Salt, heat, cold and want of oxygen do exclude it.
 * Sources: Whittier and others 2008 for calcium; Bureau of Reclamation 2008 for pH, temperature, oxygen and salinity;
 * Mackie and Claudi 2010 (from memory) for the rest.
 */
export function suitability(lake: Lake, source: Assumed): Suitability {
  const { assumed, ids } = recorder(source);
  const variables = [
    calciumClass(lake, lake.calciumScheme, assumed),
    ...optionalVariables(lake.chemistry).map(({ variable, value, unit, bounds }) =>
      classify({ variable, value, unit }, readBounds(bounds, assumed), lake, assumed),
    ),
    temperatureClass(lake, assumed),
  ];
  const limiting = variables.reduce((lowest, each) => (each.weight < lowest.weight ? each : lowest));
  const other = lake.calciumScheme === "whittier" ? "mackie-claudi" : "whittier";
  return {
    weight: limiting.weight,
    limiting,
    variables,
    otherCalciumScheme: calciumClass(lake, other, source),
    assumptionIds: ids(),
  };
}

/**
 * Of the warmest month at the surface; where that is too warm, of the depth that stays coolest, since mussels live
 * there: mixed lakes have the same temperature in both.
 */
function temperatureClass(lake: Lake, assumed: Assumed): VariableClass {
  const bounds = readBounds(temperatureBounds, assumed);
  const surface = Math.max(...lake.surfaceTemperature);
  const coolest = Math.min(surface, Math.max(...lake.deepTemperature));
  const value = surface <= bounds.highTo ? surface : Math.max(bounds.highTo, coolest);
  return classify({ variable: warmestMonth, value, unit: "°C" }, bounds, lake, assumed);
}

function optionalVariables(chemistry: Chemistry) {
  const { ph, alkalinity, hardness, oxygen, conductivity, salinity } = chemistryBounds;
  const candidates = [
    { variable: "pH", bounds: ph, value: chemistry.ph, unit: "" },
    { variable: "alkalinity", bounds: alkalinity, value: chemistry.alkalinity, unit: "mg CaCO₃/L" },
    { variable: "hardness", bounds: hardness, value: chemistry.hardness, unit: "mg CaCO₃/L" },
    { variable: "dissolved oxygen", bounds: oxygen, value: chemistry.oxygen, unit: "mg/L" },
    { variable: "conductivity", bounds: conductivity, value: chemistry.conductivity, unit: "µS/cm" },
    { variable: "salinity", bounds: salinity, value: chemistry.salinity, unit: "g/L" },
  ];
  return candidates.flatMap(({ value, ...rest }) => (value === undefined ? [] : [{ ...rest, value }]));
}

function calciumClass(lake: Lake, scheme: Lake["calciumScheme"], assumed: Assumed): VariableClass {
  const bounds = readBounds(calciumBounds[scheme], assumed);
  const found = classify(
    { variable: "calcium", value: lake.chemistry.calcium, unit: "mg/L" },
    bounds,
    lake,
    assumed,
  );
  const publishedAsVeryLow = scheme === "whittier" && found.class === "none";
  return publishedAsVeryLow ? { ...found, class: "very low", weight: assumed(weightIds["very low"]) } : found;
}

const unbounded: Bounds = {
  lowFrom: -Infinity,
  moderateFrom: -Infinity,
  highFrom: -Infinity,
  highTo: Infinity,
  moderateTo: Infinity,
  lowTo: Infinity,
};

function readBounds(ids: BoundIds, assumed: Assumed): Bounds {
  const read = Object.entries(ids).map(([bound, id]) => [bound, assumed(id)] as const);
  return { ...unbounded, ...Object.fromEntries(read) };
}

const warmestMonth = "temperature of the warmest month";
/** Variables outside whose bounds neither species lives. */
const excluding = new Set(["salinity", "dissolved oxygen", warmestMonth]);

function classify(
  measured: { variable: string; value: number; unit: string },
  bounds: Bounds,
  lake: Lake,
  assumed: Assumed,
): VariableClass {
  const outlived = lake.species === "quagga" && !excluding.has(measured.variable);
  const lasting = (found: SuitabilityClass) => (found === "none" && outlived ? "very low" : found);
  const weightOf = (found: SuitabilityClass) => assumed(weightIds[lasting(found)]);
  const found = lasting(classOf(measured.value, bounds));
  const partLeading = assumed("suitability.leading-part");
  return { ...measured, class: found, weight: weightAt(measured.value, bounds, { partLeading, weightOf }) };
}

/** A bound with the classes on its two sides, and how wide the class is in which the weight changes. */
interface Edge {
  readonly at: number;
  readonly better: SuitabilityClass;
  readonly poorer: SuitabilityClass;
  readonly width: number;
}

/** The class's own weight, and between two classes, on the poorer side of their bound, a straight line from one to the other. */
function weightAt(
  value: number,
  bounds: Bounds,
  { partLeading, weightOf }: { partLeading: number; weightOf: (found: SuitabilityClass) => number },
): number {
  const { lowFrom, moderateFrom, highFrom, highTo, moderateTo, lowTo } = bounds;
  const rising = edgesOf([highFrom, moderateFrom, lowFrom]);
  const falling = edgesOf([highTo, moderateTo, lowTo]);
  const own = weightOf(classOf(value, bounds));
  const leading = [...rising, ...falling].flatMap(({ at, better, poorer, width }) => {
    const beyond = at === highFrom || at === moderateFrom || at === lowFrom ? at - value : value - at;
    const ramp = width * partLeading;
    if (beyond <= 0 || beyond >= ramp) return [];
    return [weightOf(poorer) + (weightOf(better) - weightOf(poorer)) * (1 - beyond / ramp)];
  });
  return Math.max(own, ...leading);
}

const inOrder: readonly SuitabilityClass[] = ["high", "moderate", "low", "none"];

/** Bounds of a side, from that of the best class outwards; classes without width, and sides without bounds, are left out. */
function edgesOf(sideBounds: readonly number[]): Edge[] {
  const ends = sideBounds.filter(Number.isFinite);
  return sideBounds.flatMap((bound, place) => {
    if (!Number.isFinite(bound)) return [];
    const same = sideBounds.lastIndexOf(bound);
    if (sideBounds.indexOf(bound) !== place) return [];
    const next = sideBounds[same + 1];
    const others = ends.filter((end) => end !== bound).map((end) => Math.abs(end - bound));
    const width =
      next !== undefined && Number.isFinite(next)
        ? Math.abs(next - bound)
        : Math.min(...others, Math.abs(bound));
    return [{ at: bound, better: classAt(place), poorer: classAt(same + 1), width }];
  });
}

const classAt = (place: number): SuitabilityClass => inOrder[place] ?? "none";

function classOf(value: number, bounds: Bounds): SuitabilityClass {
  if (value < bounds.lowFrom || value > bounds.lowTo) return "none";
  if (value < bounds.moderateFrom || value > bounds.moderateTo) return "low";
  if (value < bounds.highFrom || value > bounds.highTo) return "moderate";
  return "high";
}
