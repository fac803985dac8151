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
 * Habitat suitability: each variable falls in a published class and the lowest class rules,
 * w = min(w1, w2, …). A value on a bound
 * belongs to the class above it on the rising side and to the class below it on the falling side.
 * Below the lowest class of calcium, and of pH, alkalinity and hardness which go with it, quagga is "very low",
 * not impossible (Davis and others 2015). Salt, heat, cold and want of oxygen do exclude it.
 * Sources: Whittier and others 2008 for calcium; Mackie and Claudi 2010 (from memory) for the rest.
 */
export function suitability(lake: Lake, source: Assumed): Suitability {
  const { assumed, ids } = recorder(source);
  const warmest = Math.max(...lake.surfaceTemperature);
  const variables = [
    calciumClass(lake, lake.calciumScheme, assumed),
    ...optionalVariables(lake.chemistry).map(({ variable, value, unit, bounds }) =>
      classify({ variable, value, unit }, readBounds(bounds, assumed), lake, assumed),
    ),
    classify(
      { variable: warmestMonth, value: warmest, unit: "°C" },
      readBounds(temperatureBounds, assumed),
      lake,
      assumed,
    ),
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
  const found = classOf(measured.value, bounds);
  const outlived = lake.species === "quagga" && !excluding.has(measured.variable);
  const named = found === "none" && outlived ? "very low" : found;
  return { ...measured, class: named, weight: assumed(weightIds[named]) };
}

function classOf(value: number, bounds: Bounds): SuitabilityClass {
  if (value < bounds.lowFrom || value > bounds.lowTo) return "none";
  if (value < bounds.moderateFrom || value > bounds.moderateTo) return "low";
  if (value < bounds.highFrom || value > bounds.highTo) return "moderate";
  return "high";
}
