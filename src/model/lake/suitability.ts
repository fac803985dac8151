import { type Assumed, recorder } from "../assumed.js";
import type { AssumptionId, RegisteredId } from "../register/register.js";
import { classOf, type PublishedClass, weightAt } from "./habitat-classes.js";
import type { Chemistry, Lake } from "./lake.js";
import {
  type BoundIds,
  type Bounds,
  calciumBounds,
  chemistryBounds,
  temperatureBounds,
} from "./suitability-ids.js";

type SuitabilityClass = PublishedClass | "very low";

/** Where a variable stands in the lake. */
export type VariableKey = keyof Chemistry | "temperature";

export interface VariableClass {
  readonly key: VariableKey;
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
  const variables = [...waterClasses(lake, assumed), temperatureClass(lake, assumed)];
  const limiting = limitingOf(variables);
  const other = lake.calciumScheme === "whittier" ? "mackie-claudi" : "whittier";
  return {
    weight: limiting.weight,
    limiting,
    variables,
    otherCalciumScheme: calciumClass(lake.chemistry.calcium, { ...lake, calciumScheme: other }, source),
    assumptionIds: ids(),
  };
}

type Habitat = Pick<Lake, "species" | "calciumScheme">;
/** As much of it as was measured. */
type Water = { readonly [Variable in keyof Chemistry]?: Chemistry[Variable] | undefined };

/** What is known of water alone, each variable in its class. */
export function waterClasses(
  water: Habitat & { readonly chemistry: Water },
  assumed: Assumed,
): VariableClass[] {
  const { calcium, ...others } = water.chemistry;
  return [
    ...(calcium === undefined ? [] : [calciumClass(calcium, water, assumed)]),
    ...optionalVariables(others).map(({ bounds, ...measured }) =>
      classify(measured, readBounds(bounds, assumed), water, assumed),
    ),
  ];
}

/** The first of the lowest weight. */
export const limitingOf = (variables: readonly VariableClass[]): VariableClass =>
  variables.reduce((lowest, each) => (each.weight < lowest.weight ? each : lowest));

/**
 * Of the warmest month at the surface; where that is too warm, of the depth that stays coolest, since mussels live
 * there: mixed lakes have the same temperature in both.
 */
function temperatureClass(lake: Lake, assumed: Assumed): VariableClass {
  const bounds = readBounds(temperatureBounds, assumed);
  const surface = Math.max(...lake.surfaceTemperature);
  const coolest = Math.min(surface, Math.max(...lake.deepTemperature));
  const value = surface <= bounds.highTo ? surface : Math.max(bounds.highTo, coolest);
  return classify(
    { key: "temperature", variable: "temperature of the warmest month", value, unit: "°C" },
    bounds,
    lake,
    assumed,
  );
}

function optionalVariables(chemistry: Omit<Water, "calcium">) {
  const { ph, alkalinity, hardness, oxygen, conductivity, salinity } = chemistryBounds;
  const candidates = [
    { key: "ph", variable: "pH", bounds: ph, value: chemistry.ph, unit: "" },
    {
      key: "alkalinity",
      variable: "alkalinity",
      bounds: alkalinity,
      value: chemistry.alkalinity,
      unit: "mg CaCO₃/L",
    },
    {
      key: "hardness",
      variable: "hardness",
      bounds: hardness,
      value: chemistry.hardness,
      unit: "mg CaCO₃/L",
    },
    { key: "oxygen", variable: "dissolved oxygen", bounds: oxygen, value: chemistry.oxygen, unit: "mg/L" },
    {
      key: "conductivity",
      variable: "conductivity",
      bounds: conductivity,
      value: chemistry.conductivity,
      unit: "µS/cm",
    },
    { key: "salinity", variable: "salinity", bounds: salinity, value: chemistry.salinity, unit: "g/L" },
  ] as const;
  return candidates.flatMap(({ value, ...rest }) => (value === undefined ? [] : [{ ...rest, value }]));
}

function calciumClass(calcium: number, habitat: Habitat, assumed: Assumed): VariableClass {
  const { calciumScheme } = habitat;
  const bounds = readBounds(calciumBounds[calciumScheme], assumed);
  return classify(
    { key: "calcium", variable: "calcium", value: calcium, unit: "mg/L" },
    bounds,
    habitat,
    assumed,
  );
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
  const bounds: { -readonly [Bound in keyof Bounds]: number } = { ...unbounded };
  for (const bound of Object.keys(ids) as (keyof Bounds)[]) {
    const id = ids[bound];
    if (id !== undefined) bounds[bound] = assumed(id);
  }
  return bounds;
}

/** Variables outside whose bounds neither species lives. */
const excluding: ReadonlySet<VariableKey> = new Set(["salinity", "oxygen", "temperature"]);

function classify(
  { key, variable, value, unit }: Omit<VariableClass, "class" | "weight">,
  bounds: Bounds,
  { species, calciumScheme }: Habitat,
  assumed: Assumed,
): VariableClass {
  const publishedAsVeryLow = key === "calcium" && calciumScheme === "whittier";
  const outlived = publishedAsVeryLow || (species === "quagga" && !excluding.has(key));
  const lasting = (found: PublishedClass) => (found === "none" && outlived ? "very low" : found);
  const weightOf = (found: PublishedClass) => assumed(weightIds[lasting(found)]);
  const found = lasting(classOf(value, bounds));
  const partLeading = assumed("suitability.leading-part");
  return {
    key,
    variable,
    value,
    unit,
    class: found,
    weight: weightAt(value, bounds, { partLeading, weightOf }),
  };
}
