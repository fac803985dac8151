/**
 * What structures of several kinds have, as the model takes it: plain numbers in coherent units, as in `../inputs.ts`; and
 * the two kinds that several files work on. The others stand with the object of their kind.
 */
import type { ByMonth } from "../lake/calendar.js";
import type { Bearer } from "../money/bearer.js";
import type { PinnedPlan } from "./catalogue.js";
import type { Fittings } from "./raw-water/fittings.js";

export type RackFormula = "meusburger" | "reclamation" | "clark" | "kirschmer";

export interface Rack {
  readonly width: number;
  readonly height: number;
  readonly barThickness: number;
  readonly clearSpacing: number;
  readonly barDepth: number;
  readonly barShape: "rectangular" | "rounded-upstream" | "rounded-both" | "round";
  /** From the horizontal, degrees. */
  readonly angle: number;
  /** Which head loss the costs use; Meusburger's if absent. */
  readonly formula?: RackFormula | undefined;
  readonly headLossLimit: number;
  readonly velocityLimit: number;
}

/** A clean wall is known by its absolute roughness or by its Hazen–Williams C: exactly one of them. */
export interface Pipe {
  readonly length: number;
  readonly diameter: number;
  readonly roughness?: number | undefined;
  readonly hazenWilliamsC?: number | undefined;
  /** Sum of local loss coefficients on V²/2g. */
  readonly minorLoss: number;
}

/** Counted items with hours of work a year once mussels are established: gates, guides, gauges, drains. */
interface Fixture {
  readonly name: string;
  readonly count: number;
  readonly hoursEach: number;
}

/** What structures of every kind have. */
export interface StructureBase {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
  readonly bearer: Bearer;
  readonly fixtures: readonly Fixture[];
  /** Plans that the study prescribes for parts. */
  readonly pinned: readonly PinnedPlan[];
}

/** Head that is given, or that of the lake's monthly mean level above an outlet: exactly one of them. */
interface GravitySupply {
  readonly by: "gravity";
  readonly availableHead?: number | undefined;
  readonly outletElevation?: number | undefined;
}

/** A pump known by its margin at the largest demand, or by its curve: exactly one of them. */
export interface PumpSupply {
  readonly by: "pump";
  readonly efficiency: number;
  readonly energyPrice: number;
  readonly marginHead?: number | undefined;
  /** One point, or three and more by rising flow. */
  readonly curve?: ReadonlyArray<{ readonly flow: number; readonly head: number }> | undefined;
  /** Where the pump delivers to; goes with a curve. */
  readonly deliveryElevation?: number | undefined;
  /** Goes with a curve; on-off if absent. */
  readonly control?: "on-off" | "variable-speed" | undefined;
}

/** Water drawn from the lake through a conduit. */
export interface Withdrawal extends StructureBase {
  readonly elevation: number;
  readonly demand: ByMonth;
  readonly conduit: Pipe;
  readonly supply: GravitySupply | PumpSupply;
  /** Cost of water from elsewhere while this falls short. */
  readonly alternativeWater: number;
  readonly oxidantAllowed: boolean;
}

export interface Intake extends Withdrawal {
  readonly kind: "intake";
  readonly rack: Rack;
}

export type TurbineType = "francis" | "kaplan" | "propeller" | "crossflow" | "pelton";

interface Turbine {
  readonly type: TurbineType;
  /** Largest flow through one unit. */
  readonly ratedFlow: number;
  readonly generatorEfficiency: number;
}

/** A counterflow exchanger that a line cools. */
export interface Exchanger {
  readonly area: number;
  /** Overall heat transfer coefficient when clean, W/(m² K). */
  readonly cleanCoefficient: number;
  /** Mass flow times specific heat on the hot side, kW/K. */
  readonly hotCapacityRate: number;
}

/** How a unit runs, month by month: its hours, or how many of the plant's units run on average, exactly one of them. */
interface RunningEntry {
  readonly hours?: ByMonth | undefined;
  readonly units?: ByMonth | undefined;
  /** Flow through one unit while it runs. */
  readonly flow: ByMonth;
}

export interface Hydropower extends StructureBase {
  readonly kind: "hydropower";
  readonly units: number;
  readonly elevation: number;
  readonly tailwaterElevation: number;
  /** Of turbine, generator and transformer together; where it is not given, the turbine is. */
  readonly efficiency?: number | undefined;
  readonly turbine?: Turbine | undefined;
  /** Mean flow through one unit over all hours of a month; where it is not given, what runs is. */
  readonly flow?: ByMonth | undefined;
  readonly running?: RunningEntry | undefined;
  readonly energyPrice: ByMonth;
  readonly rack: Rack;
  readonly penstock: Pipe;
  readonly coolingWater: Pipe &
    Fittings & {
      readonly requiredFlow: number;
      readonly availableHead: number;
      readonly exchanger?: Exchanger | undefined;
      readonly oxidantAllowed?: boolean | undefined;
    };
}
