import { lakesPerBlock } from "../model/futures/draw-plan.js";
import { cheapestLevels } from "../study/levels/level-plan.js";
import type { SearchResult } from "../study/search/result.js";
import { askEach, type DrawControl, type Progress } from "./ask-each.js";
import type { StudyToDraw } from "./messages.js";
import type { WorkerPool } from "./pool.js";

/** Blocks of the odds' own draws over which programs are held against one another: all in the same lakes. */
const searchedBlocks = 4;

/** Parts in which the schedules of levels are worked out: each takes well under a second. */
const levelParts = 12;

const numbered = (count: number) => Array.from({ length: count }, (_, index) => index);

/** The search for the program and the levels that fit, by the workers that draw the odds. */
export async function searchOf(
  pool: WorkerPool,
  study: StudyToDraw,
  { signal, onProgress }: DrawControl,
): Promise<SearchResult> {
  const places = numbered(searchedBlocks * lakesPerBlock);
  const planned = levelParts + places.length;
  const after = (before: number) => ({
    signal,
    onProgress: ({ done }: Progress) => onProgress({ done: before + done, planned }),
  });
  const levels = await askEach(
    numbered(levelParts),
    (part, either) => pool.ask(study, "levels", { part, parts: levelParts }, either),
    after(0),
  );
  const costs = levels.flatMap((each, part) =>
    part === 0 ? each : each.filter(({ id }) => id !== undefined),
  );
  const schedule = costs.length > 0 ? cheapestLevels(costs)?.id : undefined;
  const terms = await askEach(
    places,
    (place, either) =>
      pool.ask(
        study,
        "terms",
        { block: Math.floor(place / lakesPerBlock), lake: place % lakesPerBlock, schedule },
        either,
      ),
    after(levelParts),
  );
  return pool.ask(study, "search", { levels: costs, terms }, signal);
}
