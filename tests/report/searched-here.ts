import { lakeTerms } from "../../src/model/search/lake-terms.js";
import type { StudyToDraw } from "../../src/odds/messages.js";
import { cheapestLevels } from "../../src/study/levels/level-plan.js";
import { drawnStudy } from "../../src/study/odds/draws.js";
import type { SearchResult } from "../../src/study/search/result.js";
import { levelsIn, searchedIn, searchResult, studySearch } from "../../src/study/search/study-search.js";
import { assumptions } from "./runs.js";

/** What a study's search finds, in this thread and in one draw of the lake. */
export function searchedHere({ document, settings }: StudyToDraw): SearchResult {
  const found = studySearch(document, assumptions);
  const levels = levelsIn(found, 0, 1);
  const schedule = levels.length > 0 ? cheapestLevels(levels)?.id : undefined;
  const drawn = drawnStudy(document, assumptions, settings);
  const terms = [lakeTerms(drawn.drawn(0, 0), searchedIn(found, schedule))];
  return searchResult(found, { levels, terms });
}
