import { type FrontierPicture, frontierPicture } from "../../report/search/frontier-picture.js";
import { levelContext, levelTables } from "../../report/search/level-tables.js";
import { scheduleText } from "../../report/search/level-words.js";
import { searchedLevelsChart } from "../../report/search/levels-picture.js";
import { searchTables } from "../../report/search/search-tables.js";
import { lettersOf, programWords } from "../../report/search/search-words.js";
import { formatter } from "../../report/words/format.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { LevelSearch } from "../../study/levels/level-result.js";
import type { ProgramSearch, SearchResult } from "../../study/search/result.js";

/** What of a search can be made an option. */
interface Choosing {
  /** Address of the page. */
  readonly here: string;
  /** Nothing can be made an option of an example. */
  readonly isExample: boolean;
  /** Id of what is chosen already; empty where nothing is. */
  readonly chosen: string;
}

/** What the page tells of a search. */
export const foundOf = (
  { programs, levels }: SearchResult,
  document: StudyDocument,
  choosing: Choosing,
): object => ({
  programs: programs && programsOf(programs, document, choosing),
  levels: levels && levelsOf(levels, document, choosing),
});

/** A frontier whose dots lead to the form that makes each an option. */
function chosenFrom(picture: FrontierPicture, points: readonly Point[], here: string): object {
  const programs = picture.programs.map((dot, index) => ({
    ...dot,
    href: `${here}?point=${encodeURIComponent(dot.id)}#make-option`,
    name: points[index]?.text,
  }));
  return { ...picture, programs };
}

interface Point {
  readonly id: string;
  readonly text: string;
  readonly chosen: boolean;
}

function programsOf(programs: ProgramSearch, document: StudyDocument, choosing: Choosing): object {
  const letters = lettersOf(programs);
  const { money, study } = document;
  const picture = frontierPicture(programs, formatter(money.currency, study.units), money.horizon);
  const points = programs.frontier.map((point) => ({
    id: point.id,
    text: `${letters.get(point.id) ?? ""}: ${programWords(point)}`,
    chosen: point.id === choosing.chosen,
  }));
  return {
    ...searchTables(programs, document),
    picture: picture && !choosing.isExample ? chosenFrom(picture, points, choosing.here) : picture,
    points: choosing.isExample ? [] : points,
    base: programs.baseName,
  };
}

function levelsOf(levels: LevelSearch, document: StudyDocument, { isExample, chosen }: Choosing): object {
  const context = levelContext(levels, document);
  const chart = searchedLevelsChart(levels, document);
  return {
    ...levelTables(levels, document),
    chart: chart && { ...chart, tableHere: true },
    points: isExample
      ? []
      : levels.byDepth.map((each) => {
          const { id } = each;
          return { id, text: scheduleText(each, context), chosen: id === chosen };
        }),
  };
}
