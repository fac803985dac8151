import type { StationDocument } from "../../study/format/staffing-schema.js";
import type { StationRun } from "../../study/prepare/staffing.js";

/** A station's run with what the study says of it. */
export interface Station {
  readonly name: string;
  readonly document: StationDocument;
  readonly run: StationRun;
}

/** Whether there are queues at several sites, to be told apart. */
export const hasSites = ({ run }: Station): boolean => new Set(run.days.map(({ siteId }) => siteId)).size > 1;
