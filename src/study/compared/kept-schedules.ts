import { LRUCache } from "lru-cache";
import { recorder } from "../../model/assumed.js";
import { type Comparison, lakeUnderSchedules, yearsSinceEstablishment } from "../../model/compare.js";
import type { StudyDocument } from "../format/schema.js";
import type { PreparedStudy } from "../prepare/prepared.js";

/** A lake with its structures under all schedules, and the assumptions read so far for it. */
export interface WorkedSchedules {
  readonly known: Pick<Comparison, "schedules" | "lake">;
  readonly ids: () => readonly string[];
}

export type SchedulesOf = (prepared: PreparedStudy, document: StudyDocument) => WorkedSchedules;

/** Works the schedules out anew. */
export function workedSchedules({ input, assumed }: PreparedStudy): WorkedSchedules {
  const { assumed: source, ids } = recorder(assumed);
  return {
    known: lakeUnderSchedules({ input, yearsInfested: yearsSinceEstablishment(input), source }),
    ids,
  };
}

/**
 * The same, with the last few at hand: whoever edits boats, options or the report changes nothing of them. One set of
 * assumptions has one of these.
 */
export function keptSchedules(most: number): SchedulesOf {
  const kept = new LRUCache<string, WorkedSchedules>({ max: most });
  return (prepared, document) => {
    const key = whatTheyRestOn(prepared, document);
    const found = kept.get(key) ?? workedSchedules(prepared);
    kept.set(key, found);
    return found;
  };
}

/** All of the model's input but boats and options, and all that moves assumptions. The plans are those of the set. */
function whatTheyRestOn({ input }: PreparedStudy, { money, overrides, boats }: StudyDocument): string {
  const rest = { ...input, boats: undefined, options: undefined, plans: undefined };
  return JSON.stringify([rest, money, overrides, boats.chance.leaveOutRegions]);
}
