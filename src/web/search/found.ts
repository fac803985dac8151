import { frontierPicture } from "../../report/search/frontier-picture.js";
import { levelContext, levelTables } from "../../report/search/level-tables.js";
import { scheduleText } from "../../report/search/level-words.js";
import { searchedLevelsChart } from "../../report/search/levels-picture.js";
import { searchTables } from "../../report/search/search-tables.js";
import { lettersOf, programWords } from "../../report/search/search-words.js";
import { formatter } from "../../report/words/format.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { LevelSearch } from "../../study/levels/level-result.js";
import type { ProgramSearch, SearchResult } from "../../study/search/result.js";

/** What the page tells of a search. @param isExample nothing of it can be made an option of an example */
export const foundOf = (
  { programs, levels }: SearchResult,
  document: StudyDocument,
  isExample: boolean,
): object => ({
  programs: programs && programsOf(programs, document, isExample),
  levels: levels && levelsOf(levels, document, isExample),
});

function programsOf(programs: ProgramSearch, document: StudyDocument, isExample: boolean): object {
  const letters = lettersOf(programs);
  const { money, study } = document;
  return {
    ...searchTables(programs, document),
    picture: frontierPicture(programs, formatter(money.currency, study.units), money.horizon),
    points: isExample
      ? []
      : programs.frontier.map((point) => ({
          id: point.id,
          text: `${letters.get(point.id) ?? ""}: ${programWords(point)}`,
        })),
    base: programs.baseName,
  };
}

function levelsOf(levels: LevelSearch, document: StudyDocument, isExample: boolean): object {
  const context = levelContext(levels, document);
  const chart = searchedLevelsChart(levels, document);
  return {
    ...levelTables(levels, document),
    chart: chart && { ...chart, tableHere: true },
    points: isExample
      ? []
      : levels.byDepth.map((each) => ({ id: each.id, text: scheduleText(each, context) })),
  };
}
