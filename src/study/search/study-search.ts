import type { AssumptionSet } from "../../assumptions/entry.js";
import type { LakeTerms, SearchedProgram } from "../../model/search/lake-terms.js";
import type { StudyDocument } from "../format/schema.js";
import type { LevelCosts } from "../levels/level-costs.js";
import { type LevelPlan, levelPlan, levelSearch, scheduleOf, someLevels } from "../levels/level-plan.js";
import { prepareStudy } from "../prepare/prepared.js";
import { type SearchPlan, searchPlan } from "./plan.js";
import type { SearchResult } from "./result.js";
import { searchRules } from "./rules.js";
import { programSearch } from "./search.js";

/** What a study's search goes through; what it does not vary is absent. */
export interface StudySearch {
  readonly programs: SearchPlan | undefined;
  readonly levels: LevelPlan | undefined;
}

/** @throws InputError where there is nothing to search */
export function studySearch(document: StudyDocument, all: AssumptionSet): StudySearch {
  const prepared = prepareStudy(document, all);
  const hasPrograms = document.lake.infestedSince === undefined && searchRules(document) !== undefined;
  const variesLevels = document.search?.vary?.includes("levels") ?? true;
  return {
    programs: hasPrograms || !variesLevels ? searchPlan(document, all, prepared) : undefined,
    levels: variesLevels ? levelPlan(document, prepared) : undefined,
  };
}

/** Costs of a part of the schedules; none where levels do not vary. */
export const levelsIn = ({ levels }: StudySearch, part: number, parts: number): LevelCosts[] =>
  levels ? someLevels(levels, part, parts) : [];

/** What is worked out of each lake. @param id the schedule of levels that the option without a program follows, if any */
export function searchedIn({ programs, levels }: StudySearch, id: string | undefined): SearchedProgram {
  const { base, sets, lumpShare } = programs?.searched ?? { base: 0, sets: [], lumpShare: 0 };
  const schedule = levels && id !== undefined ? scheduleOf(levels, id) : undefined;
  return { base, sets, lumpShare, schedule };
}

/** All that the search says of a study. */
export const searchResult = (
  { programs, levels }: StudySearch,
  found: { readonly levels: readonly LevelCosts[]; readonly terms: readonly LakeTerms[] },
): SearchResult => ({
  programs: programs && programSearch(programs, found.terms),
  levels: levels && levelSearch(levels, found.levels, found.terms),
});
