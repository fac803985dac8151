import type { LevelColumnsMapped } from "../../study/format/export-schema.js";
import { valueAt } from "../../study/reading/problems.js";
import type { Edit, Place } from "../study-text.js";
import { fileOrigin, keptName } from "./file-origin.js";
import { saidMapping } from "./said-mapping.js";

/** A record that was read from an exported file. */
export interface ReadFile {
  readonly digest: string;
  readonly fileName: string;
  readonly mapping: LevelColumnsMapped;
  /** Longest gap that is joined, days; as the study has it where left out. */
  readonly fillGapsUpTo?: number | undefined;
  readonly origin?: string | undefined;
}

/** Where a study's own levels are, or those of another schedule by its id. @returns undefined where there is none */
export function levelsPlace(document: unknown, schedule: string | undefined): Place | undefined {
  if (schedule === undefined) return ["lake"];
  const others = valueAt(document, ["lake", "otherSchedules"]);
  const index = (Array.isArray(others) ? others : []).findIndex(
    (each: unknown) => valueAt(each, ["id"]) === schedule,
  );
  return index < 0 ? undefined : ["lake", "otherSchedules", index];
}

/** Changes of a study's text that put a record in place of what it had: its text stays out of the study. */
export function recordEdits(document: unknown, place: Place, file: ReadFile): Edit[] {
  const at = (...keys: string[]) => [...place, "record", ...keys];
  const { fileName, origin: told } = file;
  const { several, ...mapping } = file.mapping;
  return [
    { at: [...place, "drawdown"], remove: true },
    { at: at("csv"), remove: true },
    { at: at("file"), remove: true },
    { at: at("kept"), value: file.digest },
    { at: at("name"), value: keptName(fileName) },
    {
      at: at("export"),
      value: saidMapping({ ...mapping, several: several === "mean" ? several : undefined }),
    },
    ...(file.fillGapsUpTo === undefined ? [] : [{ at: at("fillGapsUpTo"), value: file.fillGapsUpTo }]),
    { at: at("origin"), value: fileOrigin({ told, before: valueAt(document, at("origin")), fileName }) },
  ];
}
