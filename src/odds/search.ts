import { lakesPerBlock } from "../model/futures/draw-plan.js";
import type { SearchResult } from "../study/search/result.js";
import { askEach, type DrawControl } from "./draw.js";
import type { StudyToDraw } from "./messages.js";
import type { WorkerPool } from "./pool.js";

/** Blocks of the odds' own draws over which programs are held against one another: all in the same lakes. */
const searchedBlocks = 2;

/** The search for the program that fits, by the workers that draw the odds. */
export async function searchOf(
  pool: WorkerPool,
  study: StudyToDraw,
  control: DrawControl,
): Promise<SearchResult> {
  const places = Array.from({ length: searchedBlocks * lakesPerBlock }, (_, unit) => ({
    block: Math.floor(unit / lakesPerBlock),
    lake: unit % lakesPerBlock,
  }));
  const terms = await askEach(places, (place, signal) => pool.ask(study, "terms", place, signal), control);
  return pool.ask(study, "search", { terms }, control.signal);
}
