import type { StudyEntry } from "../../app/study-entry.js";
import { freeId } from "../../editor/actions.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { edited } from "../../editor/study-text.js";
import { lettersOf } from "../../report/search/search-words.js";
import type { LevelSearch } from "../../study/levels/level-result.js";
import { dayText } from "../../study/reading/level-dates.js";
import type { ProgramSearch, SearchResult } from "../../study/search/result.js";
import { writtenOption } from "../../study/search/written.js";

/** A study's text with what was chosen of its search as the last option. */
export interface AddedOption {
  readonly name: string;
  readonly place: number;
  readonly text: string;
}

/** Absent where the search found nothing of that id. */
export function addedOption(
  entry: StudyEntry,
  { programs, levels }: SearchResult,
  id: string,
): AddedOption | undefined {
  return (programs && withProgram(entry, programs, id)) ?? (levels && withLevels(entry, levels, id));
}

const raw = (value: unknown): Readonly<Record<string, unknown>> | undefined =>
  typeof value === "object" && value !== null ? { ...value } : undefined;

function withProgram(entry: StudyEntry, result: ProgramSearch, id: string): AddedOption | undefined {
  const points = [...result.frontier, ...result.answers.flatMap(({ point }) => (point ? [point] : []))];
  const point = points.find((each) => each.id === id);
  const options = itemsOf(childOf(draftOf(entry.text, entry.fileName).document, "options"));
  const base = raw(options.find((each) => childOf(each, "id") === result.baseId));
  if (!point || !base) return undefined;
  const letter = lettersOf(result).get(point.id);
  const name = letter ? `Program ${letter} of the search` : "Program of the search";
  const value = writtenOption(base, point, {
    ...{ id: freeId("searched", options), name },
    lumpShare: result.lumpShare,
  });
  return {
    ...{ name, place: options.length },
    text: edited(entry.text, [{ at: ["options", options.length], value }]),
  };
}

/** The schedule among the lake's others, and doing nothing but to follow it. */
function withLevels(
  entry: StudyEntry,
  { byDepth, written }: LevelSearch,
  id: string,
): AddedOption | undefined {
  const drawdown = byDepth.find((each) => each.id === id)?.drawdown;
  const levels = written.find((each) => each.id === id)?.levels;
  const { document } = draftOf(entry.text, entry.fileName);
  const options = itemsOf(childOf(document, "options"));
  const schedules = itemsOf(childOf(childOf(document, "lake"), "otherSchedules"));
  const baseline = raw(
    options.find((each) => childOf(each, "steps") === undefined && childOf(each, "schedule") === undefined),
  );
  if (!drawdown || !levels || !baseline) return undefined;
  const name = `Drawdown by ${dayText(drawdown.from)} for ${drawdown.days} days`;
  const schedule = { id: freeId("searched", schedules), name, ...levels };
  const option = { ...baseline, id: freeId("searched", options), name, schedule: schedule.id };
  return {
    ...{ name, place: options.length },
    text: edited(entry.text, [
      schedules.length > 0
        ? { at: ["lake", "otherSchedules", schedules.length], value: schedule }
        : { at: ["lake", "otherSchedules"], value: [schedule] },
      { at: ["options", options.length], value: option },
    ]),
  };
}
