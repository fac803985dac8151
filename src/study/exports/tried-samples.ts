import type { AssumptionSet } from "../../assumptions/entry.js";
import { type SampleColumnsMapped, sampleLogSchema } from "../format/export-schema.js";
import { type CleanYears, cleanYears } from "./clean-years.js";
import { readSamples } from "./read-samples.js";
import type { SampleYear } from "./sample-years.js";
import { type ExportTrial, type TriedExport, triedExport } from "./tried-export.js";

/** Samples by year, and the years without a find. */
interface CountedYears {
  readonly years: readonly SampleYear[];
  readonly clean: CleanYears["runs"];
}

/** A file of samples, tried in a study before its years are kept. */
export type TriedSamples = TriedExport<SampleColumnsMapped, CountedYears>;

export const triedSamples = (trial: ExportTrial, assumptions: AssumptionSet): TriedSamples =>
  triedExport(trial, sampleLogSchema, (mapping) => {
    const { years, told, ...read } = readSamples(trial.file, mapping);
    if (years.length === 0) return { ...read, told, found: undefined };
    const clean = cleanYears(years, trial.document, assumptions);
    return { ...read, told: [...told, ...clean.told], found: { years, clean: clean.runs } };
  });
