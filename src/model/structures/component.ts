import type { Measure } from "../entries/entry-check.js";
import type { CostLine, QuantityKind } from "../money/line.js";
import type { Layer } from "../mussels/layer.js";
import type { Surface } from "../mussels/surface.js";
import type { AssumptionId, RegisteredId } from "../register/register.js";
import type { PartKind, PlanEntry } from "./catalogue.js";

/** What is paid for, and its price: the part of a cost line that a component knows, but for the quantity. */
export interface Charge {
  readonly what: string;
  readonly type: CostLine["type"];
  readonly quantityKind: QuantityKind;
  readonly unitRate: number;
  readonly assumptionIds: readonly AssumptionId[];
}

/** A quantity with its price. */
export interface Priced extends Charge {
  readonly quantity: number;
}

/** Takes up what something costs, charge by charge: a sum needs no lines. */
export type Tell = (charge: Charge, quantity: number) => void;

/**
 * One part of a structure that fouls as a whole: a rack, a conduit, a cooling line, a hull.
 * Parts are judged one by one, each with the others clean.
 */
export interface Component {
  readonly name: string;
  readonly kind: PartKind;
  readonly surface: Surface;
  /** Surface that mussels sit on, m². */
  readonly wettedArea: number;
  /** Assumptions behind that area, where the study does not give all of it. */
  readonly areaIds?: readonly AssumptionId[] | undefined;
  /** Flow that a treatment of the part's water is sized for, m³/s. */
  readonly designFlow: number;
  /** Equal pieces that are inspected one by one. */
  readonly count: number;
  readonly cleaning: Cleaning;
  /** Set where an oxidant may be dosed: the flow that is treated, by month. */
  readonly oxidant?: { readonly flow: readonly number[] } | undefined;
  /** What days out of service cost, where they cost anything. */
  readonly outage?: Outage | undefined;
  /** Days out of service for one cleaning, where they are not those of a unit of a plant. */
  readonly outageDaysId?: RegisteredId | undefined;
  /** True where pieces from walls upstream cost something even while its own wall is bare. */
  readonly isFed?: boolean | undefined;
  /**
   * Tells what the layer costs in a month of the year while it is there. Charges whose price does not rest on the layer
   * are best made once: plans are compared over thousands of months.
   * @param upstream share of the pieces of a mature infestation upstream that reach it; 1 if left out
   */
  readonly losses: (tell: Tell, layer: Layer, month: number, upstream?: number) => void;
  /** Holds what the layer does in a month of the year against each limit of the part. */
  readonly limit: (meet: Meet, layer: Layer, month: number) => void;
}

/** What days out of service cost in a month of the year: one charge, and how much of it. */
export interface Outage {
  readonly charge: (month: number) => Charge;
  readonly quantity: (days: number, month: number) => number;
}

/**
 * Takes up how near a layer comes to a limit: what counts is what it adds over the room that the clean part leaves, so that
 * the nearest limit of a month is found without an object for each.
 */
export type Meet = (limit: Limit, value: number, allowed: number, clean?: number) => void;

/** Something that a layer may not do to a part. */
export interface Limit {
  /** In words, once it is passed. */
  readonly broken: string;
  /** Assumptions that set it; empty for one that the study enters. */
  readonly assumptionIds: readonly AssumptionId[];
}

/** How near a layer comes to a limit: 0 for a clean part, 1 at the limit. */
export interface LimitLoad {
  readonly limit: Limit;
  readonly load: number;
}

export interface Cleaning {
  /** How the work is named: "cleaned by divers". */
  readonly byName: string;
  /** Cost of one cleaning apart from disposal and outage. @param shareId assumption that holds a share of the usual cost */
  readonly work: (shareId?: AssumptionId) => readonly Priced[];
  /** What taking a mass of mussels off costs beside that; nothing where the price is by area alone. @param mass kg */
  readonly removal: (mass: number, shareId?: AssumptionId) => readonly Priced[];
}

/** A check that the reader sees as a row. */
export interface Check {
  readonly what: string;
  readonly found: string;
  readonly allowed: string;
  readonly passed: boolean;
}

/** The same of an amount, which is told in the study's own units and money. */
export interface MeasuredCheck extends Pick<Check, "what" | "passed"> {
  readonly measure: Measure;
  readonly found: number;
  readonly low: number;
  readonly high: number;
  /** Where the range is from. */
  readonly from: string;
}

export interface TriedPlan {
  readonly plan: Plan;
  /** Its present value over that of 1 a year: a year's cost over the horizon, as plans are compared. */
  readonly yearlyCost: number;
  /** The limit that the layer comes nearest to, as it is told once it is passed, and how near: 1 is at the limit. */
  readonly nearestLimit: { readonly words: string; readonly load: number } | undefined;
  /** The same where the limit is passed. */
  readonly brokenLimit: string | undefined;
  readonly wayOut: WayOut | undefined;
  /** Whether nothing of it is ever done, since nothing is worth a visit or mussels stay few: it costs what leaving the part costs. */
  readonly comesToLeaving: boolean;
}

/** What is done in the years of a record that do not allow a plan. */
export interface WayOut {
  readonly years: number;
  readonly ofYears: number;
  readonly labels: readonly string[];
}

export interface ComponentResult {
  readonly name: string;
  readonly chosen: TriedPlan;
  /** Set where the study prescribes the plan: why, and what would have been chosen. */
  readonly pinned: { readonly reason: string; readonly cheapest: TriedPlan } | undefined;
  /** Every plan of the catalogue tried out, in the catalogue's order; worked out when asked for. */
  readonly everyPlan: () => readonly TriedPlan[];
  /** Made when asked for. */
  readonly impossible: readonly ImpossiblePlan[];
  /** The thickest layer that the chosen plan lets grow; made when asked for. */
  readonly thickestLayer: Layer;
  /** The thickest of a mature year if nobody cleans; made when asked for. */
  readonly untouchedLayer: Layer;
  /** Lines by year since establishment. */
  readonly told: YearTable;
}

/**
 * Lines by year since establishment, in columns: sums take no lines, and whoever reads them has them made. Years that are
 * alike have the same list, which stands once.
 */
export interface YearTable {
  /** By year, the number of its list. */
  readonly lists: readonly number[];
  /** Where each list ends. */
  readonly ends: readonly number[];
  /** What each line is told as: its name, type and kind of quantity. */
  readonly charges: readonly Charge[];
  readonly assumptionIds: ReadonlyArray<readonly AssumptionId[]>;
  readonly quantities: readonly number[];
  readonly unitRates: readonly number[];
}

/** What holds mussels off a surface all the time, with its cost in each month of the year. */
export interface Protection {
  /** Share of settlers that it lets on; 1 where it only kills what has settled. */
  readonly settlementFactor: number;
  readonly monthly: readonly (readonly Priced[])[];
}

/** One way of keeping a part in service, ready to be tried. */
export interface Plan {
  /** Its name in a study that prescribes it: "divers-12". */
  readonly id: string;
  readonly label: string;
  readonly entry: PlanEntry;
  readonly routine: Routine;
  /** What holds mussels off between the dates of the routine. */
  readonly protection: Protection | undefined;
}

/** A plan of the catalogue that this part cannot have, and why. */
export interface ImpossiblePlan {
  readonly id: string;
  readonly label: string;
  readonly reason: string;
}

/** When a plan makes its surface bare; months are counted from a January. */
export type Routine =
  | { readonly by: "nothing" }
  | { readonly by: "interval"; readonly months: number }
  | { readonly by: "month-of-year"; readonly month: number }
  | { readonly by: "trigger"; readonly limitShare: AssumptionId };
