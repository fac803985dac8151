import { type BoatSums, seasonCsv } from "../../study/exports/boat-sums.js";
import type { BoatColumnsMapped } from "../../study/format/export-schema.js";
import { valueAt } from "../../study/reading/problems.js";
import { readSeasonLog } from "../../study/reading/season-log.js";
import { childOf, itemsOf } from "../form-values.js";
import type { Edit } from "../study-text.js";
import { fileOrigin } from "./file-origin.js";
import { saidMapping } from "./said-mapping.js";

interface SummedLog {
  readonly sums: BoatSums;
  readonly mapping: BoatColumnsMapped;
  readonly fileName: string;
  readonly origin: string | undefined;
  /** Ids of the options whose stations get the measured minutes. */
  readonly stations: readonly string[];
}

/** Changes of a study's text that take a summed log in, and what they do in sentences. */
export function logEdits(
  document: unknown,
  log: SummedLog,
): { readonly edits: Edit[]; readonly told: string[] } {
  const seasons = (key: string) => ["boats", "seasons", key];
  const before = valueAt(document, seasons("csv"));
  const classIds = itemsOf(childOf(childOf(document, "boats"), "classes")).map((each) =>
    String(valueAt(each, ["id"])),
  );
  const known = typeof before === "string" ? readSeasonLog(before, classIds).log : undefined;
  const fromFile = new Set(log.sums.classes.map(({ season }) => season));
  const replaced = (known?.seasons ?? []).filter((season) => fromFile.has(season));
  const stations = stationEdits(document, log);
  const origin = fileOrigin({
    ...{ told: log.origin, before: valueAt(document, seasons("origin")), fileName: log.fileName },
    isAdded: known?.seasons.some((season) => !fromFile.has(season)) ?? false,
  });
  return {
    edits: [
      { at: seasons("csv"), value: seasonCsv(log.sums.classes, known) },
      { at: seasons("export"), value: saidMapping(log.mapping) },
      { at: seasons("origin"), value: origin },
      ...stations.edits,
    ],
    told: [
      ...(replaced.length > 0 ? [`Seasons of the log that the file replaces: ${replaced.join(", ")}.`] : []),
      ...stations.told,
    ],
  };
}

/** Minutes with one decimal: seconds of a check are not measured. */
const minutes = (mean: number) => `${mean.toFixed(1)} min`;
const percent = (share: number) => `${(100 * share).toPrecision(3)} %`;

function stationEdits(document: unknown, { sums, stations }: SummedLog): { edits: Edit[]; told: string[] } {
  const screened = sums.classes.reduce((sum, each) => sum + each.screened, 0);
  const held = sums.classes.reduce((sum, each) => sum + each.setAside, 0);
  const options = itemsOf(childOf(document, "options"));
  const edits: Edit[] = [];
  const told: string[] = [];
  for (const id of stations) {
    const index = options.findIndex((each) => valueAt(each, ["id"]) === id);
    if (valueAt(options[index], ["station"]) === undefined) {
      told.push(`Option “${id}” ${index < 0 ? "is not in the study" : "has no station"} and is unchanged.`);
      continue;
    }
    const at = (key: string) => ["options", index, "station", "service", key];
    const { quickCheck, fullInspection } = sums;
    edits.push(
      ...(quickCheck ? [{ at: at("quickCheck"), value: minutes(quickCheck.mean) }] : []),
      ...(fullInspection ? [{ at: at("fullInspection"), value: minutes(fullInspection.mean) }] : []),
      ...(screened > 0 ? [{ at: at("setAsideShare"), value: percent(held / screened) }] : []),
    );
    told.push(`The station of “${id}” gets the measured minutes and the share held for full inspection.`);
  }
  return { edits, told };
}
