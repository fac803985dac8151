import type { StudyPlan } from "./draws.js";
import type { Sensitivity } from "./odds.js";

/** Inputs of a group that move together as one count once. */
const asOne = 0.9;

/**
 * How much of what the drawn inputs explain of the net benefit rests on typical values: squared rank correlations of
 * these over those of all. Nothing where a study has none.
 */
export function typicalShareOf(plan: StudyPlan, ranks: Sensitivity["ranks"]): number | undefined {
  const typical = new Set(plan.inputs.filter(({ isTypical }) => isTypical).map(({ id }) => id));
  if (typical.size === 0) return undefined;
  const units = new Map<string, { squared: number; isTypical: boolean }>();
  for (const { id, correlation } of ranks) {
    const group = plan.groups.find(
      ({ members, rankCorrelation }) => rankCorrelation >= asOne && members.includes(id),
    );
    const key = group?.id ?? id;
    const squared = Math.max(units.get(key)?.squared ?? 0, correlation ** 2);
    units.set(key, { squared, isTypical: typical.has(id) });
  }
  const sum = (some: readonly { squared: number }[]) =>
    some.reduce((total, { squared }) => total + squared, 0);
  const all = [...units.values()];
  const whole = sum(all);
  return whole === 0 ? 0 : sum(all.filter((unit) => unit.isTypical)) / whole;
}
