import type { Checked } from "../entries/checked.js";
import type { EntryCheck } from "../entries/entry-check.js";
import type { ByMonth } from "../lake/calendar.js";
import type { QuantityKind } from "../money/line.js";
import type { Layer } from "../mussels/layer.js";
import type { Component, Priced } from "./component.js";
import type { Contexts, LakeContext } from "./context.js";
import type { Rack, StructureBase } from "./inputs.js";
import type { PipePart } from "./pipe-part.js";
import type { PumpSummary } from "./pump-summary.js";
import type { LitterYear } from "./ramp.js";
import type { UpstreamWall } from "./raw-water/fittings.js";

/** Where a structure stands: at one elevation, from one to another, or on the water. */
export type Reach =
  | { readonly floats: true }
  | { readonly floats: false; readonly low: number; readonly high: number };

/** Where water is taken in, with its flow. */
export interface Inlet {
  readonly elevation: number;
  readonly flow: ByMonth;
}

/** A word of a structure's size, or a figure of it. */
export type SizeWord =
  | string
  | {
      readonly value: number;
      readonly measure: "area" | "flow" | "landArea" | "length" | "ratio" | "smallLength";
    };

/** Something that a clean structure gives or uses in a year under a level schedule, with what a unit of it costs. */
export interface ServiceItem {
  readonly what: string;
  readonly quantityKind: QuantityKind;
  /** By month; more of it costs more. */
  readonly quantity: readonly number[];
  readonly unitRate: readonly number[];
}

/** Another of the same, somewhat lower and with a share of the flow: what large lakes are made of. */
export interface Lowering {
  readonly fall: number;
  readonly flowShare: number;
}

/** What a structure gives in a year, by which its yearly cost is told as a price. */
export interface YearlyOutput {
  /** As it stands after "a year's cost by": "water delivered". */
  readonly what: string;
  readonly quantity: number;
  readonly measure: "volume" | "treatedVolume" | "landArea";
  /** Another structure whose cost is told with it, by its id. */
  readonly alongWith?: string | undefined;
}

/** All that the model, the report and the editor know of one kind of structure. What is left out, it does not have. */
export interface StructureKind<Input extends StructureBase> {
  readonly kind: Input["kind"];
  /** As a form heads it: "Launch ramp". */
  readonly title: string;
  /** In the register: "power plant". */
  readonly name: string;
  /** Fields that are not needed by themselves, but without which a pasted table cannot tell the kind. */
  readonly commonFields: readonly string[];
  /** False where it is duties of the whole lake and stands nowhere. */
  readonly isBuilt: boolean;
  /** True where published yearly costs of plants cover it. */
  readonly hasPublishedCosts: boolean;
  /** Water that it takes to deliver, m³/s: published costs by volume are held against it. */
  readonly waterTaken?: (structure: Input) => ByMonth;

  /** Its lowest field of elevation, also of a study that cannot be read yet. */
  readonly lowestField: "elevation" | "bottomElevation";
  readonly reach: (structure: Input) => Reach | undefined;
  /** What it is measured by. */
  readonly size: (structure: Input) => readonly SizeWord[];
  readonly inlet?: (structure: Input) => Inlet;
  /** Undefined where this one has none. */
  readonly rack?: (structure: Input) => { readonly rack: Rack; readonly flow: number } | undefined;
  readonly pipes?: (structure: Input) => readonly PipePart[];
  /** Walls whose mussels break off into the water of lines tapped from it. */
  readonly walls?: (structure: Input) => readonly UpstreamWall[];
  /** Boats launched there, a day, over a breadth in metres. */
  readonly launches?: (structure: Input) => { readonly perDay: ByMonth; readonly width: number };

  /** The parts that foul; none where it is swept or only has duties. */
  readonly components: (structure: Input, context: LakeContext) => Component[];
  /** Dead shell that comes to lie on it by year since establishment. */
  readonly litter?: (structure: Input, contexts: Contexts) => readonly LitterYear[];
  /** Lines of its own beside those of its parts, by year since establishment. */
  readonly ownYears?: (
    structure: Input,
    litter: readonly LitterYear[],
    context: LakeContext,
  ) => readonly (readonly Priced[])[];
  /** Energy that it makes in a clean year, kWh by month: it loses no more than that. */
  readonly cleanEnergy?: (structure: Input, contexts: Contexts) => readonly number[];
  /**
   * What the levels cost it without any mussels, month by month: energy that a lower head does not make, water that an
   * intake does not get, power that a higher lift takes, launches that a ramp ending above the water loses. Only
   * differences between two schedules mean anything.
   */
  readonly cleanService?: (structure: Input, context: LakeContext) => readonly ServiceItem[];
  /** A pump known by its curve, with a layer in its conduit. */
  readonly pumps?: (structure: Input, layer: Layer, context: LakeContext) => readonly PumpSummary[];
  /** By what its yearly cost is told as a price; the price is none where that is nothing. */
  readonly outputs?: (structure: Input) => readonly YearlyOutput[];
  /** What whoever works on it or prescribes a plan for it has to know, beside what the plans say. */
  readonly cautions?: string;
  /** What was entered held against what is usual, beside its pipes, its rack and its inlet. */
  readonly entries?: (checked: Checked<Input>) => EntryCheck[];

  readonly lowered: (structure: Input, by: Lowering) => Input;
}

/** Standing at one elevation. */
export const atOneElevation = ({ elevation }: { readonly elevation: number }): Reach => ({
  floats: false,
  low: elevation,
  high: elevation,
});

export const sized = (value: number, measure: Exclude<SizeWord, string>["measure"]): SizeWord => ({
  value,
  measure,
});

/** Bore and length of a pipe. */
export const boreWords = ({ diameter, length }: { diameter: number; length: number }): SizeWord[] => [
  sized(diameter, "smallLength"),
  " × ",
  sized(length, "length"),
];
