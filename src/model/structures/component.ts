import type { CostLine, QuantityKind } from "../money/line.js";
import type { Layer } from "../mussels/layer.js";
import type { Surface } from "../mussels/surface.js";
import type { Plan } from "./plan.js";

/** A quantity with its price: the part of a cost line that a component knows. */
export interface Priced {
  readonly what: string;
  readonly type: CostLine["type"];
  readonly quantity: number;
  readonly quantityKind: QuantityKind;
  readonly unitRate: number;
  readonly assumptionIds: readonly string[];
}

/**
 * One part of a structure that fouls as a whole: a rack, a conduit, a cooling line, a hull.
 * Parts are judged one by one, each with the others clean.
 */
export interface Component {
  readonly name: string;
  readonly surface: Surface;
  /** Surface that mussels sit on, m². */
  readonly wettedArea: number;
  readonly cleaning: Cleaning;
  /** Set where an oxidant may be dosed; the cost of a month of it. */
  readonly oxidant?: { readonly settlementFactor: number; readonly monthly: (month: number) => Priced };
  /** What the layer costs in a month of the year while it is there. */
  readonly losses: (layer: Layer, month: number) => readonly Priced[];
  /** Which limit the layer breaks, in words; undefined if none. */
  readonly brokenLimit: (layer: Layer, month: number) => string | undefined;
}

export interface Cleaning {
  /** How the work is named: "cleaned by divers". */
  readonly byName: string;
  /** Cost of one cleaning apart from disposal, by method. */
  readonly work: (method: Plan["method"], month: number) => readonly Priced[];
}

/** A check that the reader sees as a row. */
export interface Check {
  readonly what: string;
  readonly found: string;
  readonly allowed: string;
  readonly passed: boolean;
}

export interface TriedPlan {
  readonly plan: Plan;
  /** Yearly cost in a mature infestation, price-year money. */
  readonly yearlyCost: number;
  readonly brokenLimit: string | undefined;
  /** The thickest layer of the cycle that was costed. */
  readonly thickestLayer: Layer;
}

export interface ComponentResult {
  readonly name: string;
  readonly chosen: TriedPlan;
  readonly tried: readonly TriedPlan[];
  /** The thickest layer that the chosen plan lets grow, and the thickest of a mature year if nobody cleans. */
  readonly thickestLayer: Layer;
  readonly untouchedLayer: Layer;
  readonly years: readonly (readonly Priced[])[];
  /** Thickest layer in each year since establishment, m. */
  readonly thicknessByYear: readonly number[];
}
