import { at, meanOf } from "../../lists.js";
import type { Schedule } from "../../model/lake/lake.js";
import { levelYears } from "../../model/search/drawdown.js";
import type { LakeTerms } from "../../model/search/lake-terms.js";
import type { StudyDocument } from "../format/schema.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { type LevelCosts, levelCosts } from "./level-costs.js";
import { type LevelGrid, levelGrid, type TriedDrawdown } from "./level-grid.js";
import type { LevelSearch, SearchedSchedule } from "./level-result.js";
import { type LevelRules, levelRules, meanDaily } from "./level-rules.js";
import { writtenSchedule } from "./level-written.js";

/** All schedules of levels that a search tries: those of the study and those of its grid. */
export interface LevelPlan {
  readonly document: StudyDocument;
  readonly prepared: PreparedStudy;
  readonly rules: LevelRules;
  readonly grid: LevelGrid;
  readonly schedules: readonly Schedule[];
}

export function levelPlan(document: StudyDocument, prepared: PreparedStudy): LevelPlan {
  const { lake } = prepared.input;
  const rules = levelRules(document, lake);
  const grid = levelGrid(rules, lake, document.study.units);
  const schedules = [...lake.otherSchedules, ...grid.tried.map(({ schedule }) => schedule)];
  return { document, prepared, rules, grid, schedules };
}

/** A part of the work: each so manieth schedule, with the present levels to hold them against. */
export const someLevels = ({ prepared, schedules }: LevelPlan, part: number, parts: number): LevelCosts[] =>
  levelCosts(
    prepared,
    schedules.filter((_, index) => index % parts === part),
  );

const cent = 0.005;

/** The cheapest of all that were worked out; absent where none costs less than the present levels. */
export function cheapestLevels(costs: readonly LevelCosts[]): LevelCosts | undefined {
  const present = costs.find(({ id }) => id === undefined);
  const least = costs.reduce((one, other) => (other.cost < one.cost ? other : one));
  return present && least.cost < present.cost - cent ? least : undefined;
}

/** All that the search says of levels. @param terms lakes in which the cheapest stands behind the options of the study */
export function levelSearch(
  plan: LevelPlan,
  costs: readonly LevelCosts[],
  terms: readonly LakeTerms[],
): LevelSearch {
  const { document, prepared, grid, rules } = plan;
  const byId = new Map(costs.map((each) => [each.id, each]));
  const told = (id: string | undefined): SearchedSchedule => {
    const found = costOf(byId, id);
    const name = id === undefined ? "present levels" : nameOf(document, id);
    const drawdown = grid.tried.find((each) => each.id === id)?.drawdown;
    return { ...found, name, drawdown, saved: costOf(byId, undefined).cost - found.cost };
  };
  const cheapest = cheapestLevels(costs);
  const best = cheapest && told(cheapest.id);
  const byDepth = cheapestByDepth(grid.tried, byId).map(({ id }) => told(id));
  return {
    present: told(undefined),
    typed: document.lake.otherSchedules.map(({ id }) => told(id)),
    ...{ byDepth, best, rules },
    tried: grid.tried.length,
    leftOut: grid.leftOut,
    storageIsPriced: document.lake.storageValue !== undefined,
    simulated: best && simulatedSaving(plan, terms),
    daily: {
      present: meanDaily(levelYears(prepared.input.lake)),
      best: best && meanDaily(levelYears(scheduleOf(plan, best.id))),
    },
    written: grid.tried
      .filter(({ id }) => byDepth.some((each) => each.id === id))
      .map((each) => ({ id: each.id, levels: writtenSchedule(each, document.study.units) })),
  };
}

function costOf(byId: ReadonlyMap<string | undefined, LevelCosts>, id: string | undefined): LevelCosts {
  const found = byId.get(id);
  if (!found) throw new Error(`levels: nothing was worked out of ${id ?? "the present levels"}`);
  return found;
}

export function scheduleOf({ schedules }: LevelPlan, id: string | undefined): Schedule {
  const found = schedules.find((each) => each.id === id);
  if (!found) throw new Error(`levels: no schedule has the id ${id}`);
  return found;
}

const nameOf = ({ lake }: StudyDocument, id: string): string | undefined =>
  lake.otherSchedules.find((each) => each.id === id)?.name;

/** For each lowest level the drawdown that costs least. */
function cheapestByDepth(
  tried: readonly TriedDrawdown[],
  byId: ReadonlyMap<string | undefined, LevelCosts>,
): TriedDrawdown[] {
  const best = new Map<number, TriedDrawdown>();
  for (const each of tried) {
    const { lowest } = each.drawdown;
    const before = best.get(lowest);
    if (!before || costOf(byId, each.id).cost < costOf(byId, before.id).cost) best.set(lowest, each);
  }
  return [...best].sort(([one], [other]) => other - one).map(([, each]) => each);
}

/** What the last of the options saves against the one that does nothing, in each lake. */
function simulatedSaving({ prepared }: LevelPlan, terms: readonly LakeTerms[]): LevelSearch["simulated"] {
  const baseline = prepared.input.options.findIndex(
    ({ steps, schedule }) => steps === undefined && schedule === undefined,
  );
  const saved = terms.map(({ typed }) => at(typed, baseline).cost - at(typed, typed.length - 1).cost);
  return { saved: meanOf(saved), savesIn: saved.filter((each) => each > 0).length / saved.length };
}
