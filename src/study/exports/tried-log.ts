import { type BoatColumnsMapped, boatLogSchema } from "../format/export-schema.js";
import type { BoatSums } from "./boat-sums.js";
import { readBoatLog } from "./read-boat-log.js";
import { type ExportTrial, idsAt, type TriedExport, triedExport } from "./tried-export.js";

/** A log of boats, tried in a study before its sums are kept. */
export type TriedLog = TriedExport<BoatColumnsMapped, BoatSums>;

export const triedLog = (trial: ExportTrial): TriedLog =>
  triedExport(trial, boatLogSchema, (mapping) => {
    const { sums, ...read } = readBoatLog(trial.file, mapping, classIdsOf(trial.document));
    return { ...read, found: sums.classes.length > 0 ? sums : undefined };
  });

/** Ids of the vessel classes, as far as they are entered. */
export const classIdsOf = (document: unknown): string[] => idsAt(document, ["boats", "classes"]);
