import { type WorkColumnsMapped, workOrdersSchema } from "../../format/export-schema.js";
import { type ExportTrial, idsAt, type TriedExport, triedExport } from "../tried-export.js";
import { readWork } from "./read-work.js";
import type { WorkSums } from "./work-sums.js";

/** A file of work orders, tried in a study before own values are taken from it. */
export type TriedWork = TriedExport<WorkColumnsMapped, WorkSums>;

export const triedWork = (trial: ExportTrial): TriedWork =>
  triedExport(trial, workOrdersSchema, (mapping) => {
    const { sums, ...read } = readWork(trial.file, mapping, structureIdsOf(trial.document));
    return { ...read, found: sums };
  });

/** Ids of the structures, as far as they are entered. */
export const structureIdsOf = (document: unknown): string[] => idsAt(document, ["structures"]);
