import { findsPerSample, type SampleKind } from "../../model/risk/detection.js";
import type { CleanRun } from "../../study/exports/clean-years.js";
import type { SampleYear } from "../../study/exports/sample-years.js";
import type { SampleColumnsMapped } from "../../study/format/export-schema.js";
import { valueAt } from "../../study/reading/problems.js";
import { childOf, itemsOf } from "../form-values.js";
import type { Edit } from "../study-text.js";
import { fileOrigin, keptName, keptText } from "./file-origin.js";
import { saidMapping } from "./said-mapping.js";

interface CountedSamples {
  readonly years: readonly SampleYear[];
  readonly clean: readonly CleanRun[];
  readonly mapping: SampleColumnsMapped;
  readonly fileName: string;
  readonly origin: string | undefined;
  /** The option whose checks were in force in the clean years. */
  readonly under: string | undefined;
  /** Ids of the options whose monitoring gets the yearly counts. */
  readonly watching: readonly string[];
}

const kinds = Object.keys(findsPerSample) as SampleKind[];
const kindWords: Readonly<Record<SampleKind, string>> = {
  planktonTows: "plankton tows",
  settlementPlates: "settlement plates",
  searches: "searches",
  ednaSamples: "eDNA samples",
};

/** Changes of a study's text that take counted samples in, and what they do in sentences. */
export function sampleEdits(
  document: unknown,
  samples: CountedSamples,
): { readonly edits: Edit[]; readonly told: string[] } {
  const watching = watchingEdits(document, samples);
  const at = (key: string) => ["boats", "samples", key];
  return {
    edits: [
      { at: at("export"), value: saidMapping(samples.mapping) },
      {
        at: at("origin"),
        value: fileOrigin({
          told: samples.origin,
          before: valueAt(document, at("origin")),
          fileName: samples.fileName,
        }),
      },
      ...periodEdits(document, samples),
      ...watching.edits,
    ],
    told: watching.told,
  };
}

/** How samples were last read; an earlier version kept it with the clean years. */
export function sampleMapping(document: unknown): object {
  const periods = itemsOf(childOf(childOf(document, "boats"), "cleanPeriods"));
  const before = periods.map((each) => valueAt(each, ["export"])).findLast((each) => each !== undefined);
  return Object(valueAt(document, ["boats", "samples", "export"]) ?? before ?? {});
}

function periodEdits(document: unknown, { years, clean, fileName, under }: CountedSamples): Edit[] {
  const before = itemsOf(childOf(childOf(document, "boats"), "cleanPeriods"));
  const periods = clean.map(({ from, to }) => ({
    ...{ from, to },
    ...(under === undefined ? {} : { under }),
    origin: `${countsText(years.filter(({ year }) => year >= from && year <= to))} in ${keptName(fileName)}, none with mussels`,
  }));
  const at = ["boats", "cleanPeriods"];
  if (before.length === 0) return periods.length === 0 ? [] : [{ at, value: periods }];
  return periods.map((value, index) => ({ at: [...at, before.length + index], value }));
}

/** "130 plankton tows, 24 eDNA samples" of all the years. */
function countsText(years: readonly SampleYear[]): string {
  const sums = kinds.map((kind) => ({ kind, sum: sumOf(years, kind) })).filter(({ sum }) => sum > 0);
  return sums.map(({ kind, sum }) => `${sum.toLocaleString("en-US")} ${kindWords[kind]}`).join(", ");
}

const sumOf = (years: readonly SampleYear[], kind: SampleKind) =>
  years.reduce((sum, { counts }) => sum + counts[kind], 0);

function watchingEdits(
  document: unknown,
  { years, fileName, watching }: CountedSamples,
): { edits: Edit[]; told: string[] } {
  const options = itemsOf(childOf(document, "options"));
  const means = kinds
    .map((kind) => ({ kind, mean: Math.round(sumOf(years, kind) / years.length) }))
    .filter(({ mean }) => mean > 0);
  const span = `${years[0]?.year} to ${years.at(-1)?.year}`;
  const words = means.map(({ kind }) => kindWords[kind]).join(", ");
  const edits: Edit[] = [];
  const told: string[] = [];
  for (const id of watching) {
    const index = options.findIndex((each) => valueAt(each, ["id"]) === id);
    const isByChances = valueAt(options[index], ["monitoring", "noticedWithin"]) !== undefined;
    if (index < 0 || isByChances || means.length === 0) {
      const why =
        index < 0
          ? "is not in the study"
          : isByChances
            ? "has chances in place of samples"
            : "has no samples to get";
      told.push(`Option “${id}” ${why} and is unchanged.`);
      continue;
    }
    const at = (key: string) => ["options", index, "monitoring", key];
    edits.push(...means.map(({ kind, mean }) => ({ at: at(kind), value: mean })), {
      at: at("origin"),
      value: keptText(`${words}: mean of ${span} in ${keptName(fileName)}${othersOf(options[index], means)}`),
    });
    const counts = means.map(({ kind, mean }) => `${mean} ${kindWords[kind]}`).join(", ");
    told.push(`The monitoring of “${id}” gets the mean of ${span}: ${counts} a year.`);
  }
  return { edits, told };
}

/** Where counts come from that stay as they are, of kinds that the file has none of. */
function othersOf(option: unknown, means: readonly { readonly kind: SampleKind }[]): string {
  const stays = (kind: SampleKind) =>
    valueAt(option, ["monitoring", kind]) !== undefined && means.every((each) => each.kind !== kind);
  if (!kinds.some(stays)) return "";
  const before = String(valueAt(option, ["monitoring", "origin"]) ?? "");
  return `; others: ${before.split("; others: ").at(-1)}`;
}
