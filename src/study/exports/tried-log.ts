import { type BoatColumnsMapped, boatLogSchema } from "../format/export-schema.js";
import type { BoatSums } from "./boat-sums.js";
import { readBoatLog } from "./read-boat-log.js";
import { type ExportTrial, type FileKind, idsAt, type TriedExport, triedExport } from "./tried-export.js";

/** A log of boats, tried in a study before its sums are kept. */
export type TriedLog = TriedExport<BoatColumnsMapped, BoatSums>;

export const boatLogs: FileKind<BoatColumnsMapped, BoatSums> = {
  schema: boatLogSchema,
  read: (file, mapping, document) => {
    const { sums, ...read } = readBoatLog(file, mapping, idsAt(document, ["boats", "classes"]));
    return { ...read, found: sums.classes.length > 0 ? sums : undefined };
  },
};

export const triedLog = (trial: ExportTrial): TriedLog => triedExport(trial, boatLogs);
