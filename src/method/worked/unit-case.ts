import type { Layer } from "../../model/mussels/layer.js";
import type { PipeSummary } from "../../model/structures/hydraulic-summary.js";
import type { Hydropower } from "../../model/structures/inputs.js";
import type { StudyDocument } from "../../study/format/schema.js";
export interface UnitCase {
  readonly plant: Hydropower;
  readonly entered: EnteredPlant;
  readonly layer: Layer;
  readonly pipe: PipeSummary;
  readonly month: number;
}

export type EnteredPlant = Extract<StudyDocument["structures"][number], { kind: "hydropower" }>;
