import type { StationRun } from "../study/staffing.js";
import type { StationDocument } from "../study/staffing-schema.js";

/** A station's run with what the study says of it. */
export interface Station {
  readonly name: string;
  readonly document: StationDocument;
  readonly run: StationRun;
}
