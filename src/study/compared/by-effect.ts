import type { InputDifference } from "./input-differences.js";
import { type InputGroup, inputGroups } from "./input-groups.js";

/** Changed inputs of which each is tried alone; more are grouped by where they stand before. */
const mostTried = 40;

/** How far one of two amounts moves, in cents, where groups change and all others stay; undefined where that contradicts. */
export type EffectOf = (group: InputGroup) => Promise<number | undefined>;

/**
 * Changed inputs in at most `most` groups: each by itself where there is room; else those that move the figures most by
 * themselves, and all others as one. Those that contradict the study by themselves stand first: they belong together.
 */
export async function groupsByEffect(
  differences: readonly InputDifference[],
  most: number,
  effectOf: EffectOf,
): Promise<InputGroup[]> {
  const candidates = inputGroups(differences, mostTried);
  if (candidates.length <= most) return candidates;
  const tried: { readonly group: InputGroup; readonly size: number }[] = [];
  for (const group of candidates) tried.push({ group, size: (await effectOf(group)) ?? Infinity });
  const ordered = tried.toSorted((one, other) => other.size - one.size);
  const apart = new Set(ordered.slice(0, most - 1).map(({ group }) => group));
  const rest = ordered.slice(most - 1);
  const inputs = rest.flatMap(({ group }) => group.inputs);
  return [
    ...candidates.filter((group) => apart.has(group)),
    { name: "all other changes", inputs, mostAlone: rest[0]?.size ?? 0 },
  ];
}
