import type { Waterway } from "../../model/hydraulics/waterway.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { PipeSummary } from "../../model/structures/hydraulic-summary.js";
import type { Intake } from "../../model/structures/inputs.js";
import type { Conveyed, PumpedSupply, Supply } from "../../model/structures/supply.js";
import type { StudyDocument } from "../../study/format/schema.js";
/** The conduit of the example in its two states, with what drives its water. */
export interface Drive {
  readonly demand: number;
  readonly viscosity: number;
  readonly supply: Supply;
  /** Set where the pump is known by its curve. */
  readonly pumped: PumpedSupply | undefined;
  readonly fouled: Waterway;
  readonly cleanMonth: Conveyed;
  readonly fouledMonth: Conveyed;
}

/** What the month's consequences are reckoned from, in symbols of the sheet. */
export interface Outcome {
  /** Flow delivered through the fouled conduit. */
  readonly delivered: string;
  /** Flow delivered through the clean one. */
  readonly cleanDelivered: string;
  readonly extraHead: string;
}

export interface IntakeCase {
  readonly intake: Intake;
  readonly entered: EnteredIntake;
  readonly layer: Layer;
  readonly onRack: Layer | undefined;
  /** At the largest flow. */
  readonly pipe: PipeSummary;
  readonly month: number;
}

export type EnteredIntake = Extract<StudyDocument["structures"][number], { kind: "intake" }>;
