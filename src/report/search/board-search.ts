import type { ReportContext } from "../document/context.js";
import { type FrontierPicture, frontierPicture } from "./frontier-picture.js";
import { levelContext } from "./level-tables.js";
import { boardLevelText } from "./level-words.js";

/** What the board reads of the study's search. */
export interface BoardSearch {
  readonly frontier: FrontierPicture | undefined;
  /** Whether other levels cost less once the lake is infested; empty where they do not vary. */
  readonly levels: string;
}

/** Absent where the study has no search. */
export function boardSearch({ search, run, format, horizon }: ReportContext): BoardSearch | undefined {
  if (!search) return undefined;
  return {
    frontier: search.programs && frontierPicture(search.programs, format, horizon),
    levels: search.levels ? boardLevelText(levelContext(search.levels, run.document)) : "",
  };
}
