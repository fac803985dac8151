import { type WorkColumnsMapped, workOrdersSchema } from "../../format/export-schema.js";
import { type ExportTrial, type FileKind, idsAt, type TriedExport, triedExport } from "../tried-export.js";
import { readWork } from "./read-work.js";
import type { WorkSums } from "./work-sums.js";

/** A file of work orders, tried in a study before own values are taken from it. */
export type TriedWork = TriedExport<WorkColumnsMapped, WorkSums>;

export const workOrders: FileKind<WorkColumnsMapped, WorkSums> = {
  schema: workOrdersSchema,
  read: (file, mapping, document) => {
    const { sums, ...read } = readWork(file, mapping, idsAt(document, ["structures"]));
    return { ...read, found: sums };
  },
};

export const triedWork = (trial: ExportTrial): TriedWork => triedExport(trial, workOrders);
