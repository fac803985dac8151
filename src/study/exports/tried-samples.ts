import type { AssumptionSet } from "../../assumptions/entry.js";
import { type SampleColumnsMapped, sampleLogSchema } from "../format/export-schema.js";
import { type CleanYears, cleanYears } from "./clean-years.js";
import { readSamples } from "./read-samples.js";
import type { SampleYear } from "./sample-years.js";
import { type ExportTrial, type FileKind, type TriedExport, triedExport } from "./tried-export.js";

/** Samples by year, and the years without a find. */
interface CountedYears {
  readonly years: readonly SampleYear[];
  readonly clean: CleanYears["runs"];
}

/** A file of samples, tried in a study before its years are kept. */
export type TriedSamples = TriedExport<SampleColumnsMapped, CountedYears>;

/** @param assumptions that say what a usual effort is */
export const sampleLogs = (assumptions: AssumptionSet): FileKind<SampleColumnsMapped, CountedYears> => ({
  schema: sampleLogSchema,
  read: (file, mapping, document) => {
    const { years, told, ...read } = readSamples(file, mapping);
    if (years.length === 0) return { ...read, told, found: undefined };
    const clean = cleanYears(years, document, assumptions);
    return { ...read, told: [...told, ...clean.told], found: { years, clean: clean.runs } };
  },
});

export const triedSamples = (trial: ExportTrial, assumptions: AssumptionSet): TriedSamples =>
  triedExport(trial, sampleLogs(assumptions));
