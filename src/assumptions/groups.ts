import { z } from "zod";
import { bases } from "./basis.js";
import type { CorrelationGroup, Source } from "./entry.js";
import type { HeldIds } from "./written-items.js";

export const groupsFile = "groups.yaml";

const groupSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/, "lower-case words joined by hyphens"),
  name: z.string().min(1),
  members: z.array(z.string()).min(2, "at least two members"),
  rankCorrelation: z.number().gt(0, "a correlation above 0").lt(1, "a correlation below 1"),
  basis: z.enum(bases),
  source: z.string().min(1),
  note: z.string(),
});

/** Reads the groups of assumptions that move together and adds what is wrong with them to `problems`. */
export function readGroups(
  content: unknown,
  ids: HeldIds,
  sources: ReadonlyMap<string, Source>,
  problems: string[],
): CorrelationGroup[] {
  const parsed = z.array(groupSchema).safeParse(content);
  if (!parsed.success) {
    problems.push(
      ...parsed.error.issues.map(
        ({ path, message }) => `${groupsFile}: ${path.map(String).join(", ")}: ${message}. Correct it.`,
      ),
    );
    return [];
  }
  const groupOf = new Map<string, string>();
  return parsed.data.map((group) => {
    if (!sources.has(group.source)) {
      problems.push(`${groupsFile}: ${group.id} names the source "${group.source}". Add its citation.`);
    }
    for (const member of group.members) {
      const other = groupOf.get(member);
      if (ids.areAll && !ids.has(member)) {
        problems.push(`${groupsFile}: ${group.id} names "${member}", which no file holds. Correct it.`);
      }
      if (other !== undefined) {
        problems.push(`${groupsFile}: ${member} is in ${other} and in ${group.id}. Keep one of the two.`);
      }
      groupOf.set(member, group.id);
    }
    return group;
  });
}
