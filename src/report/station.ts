import type { StationRun } from "../study/staffing.js";
import type { StationDocument } from "../study/staffing-schema.js";

/** A station's run with what the study says of it. */
export interface Station {
  readonly name: string;
  readonly document: StationDocument;
  readonly run: StationRun;
}

/** Whether there are queues at several sites, to be told apart. */
export const hasSites = ({ run }: Station): boolean => new Set(run.days.map(({ siteId }) => siteId)).size > 1;
