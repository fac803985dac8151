import type { Comparison } from "../../model/compare.js";

interface Compared {
  readonly comparison: Pick<Comparison, "structures">;
}

/** A part that is kept by another plan in one study than in the other. */
export interface PlanDifference {
  readonly structure: string;
  readonly part: string;
  readonly left: KeptBy;
  readonly right: KeptBy;
  /** Cost a year, in the right study, of the plan that the left one has; absent where it is not possible there. */
  readonly leftPlanAtRight: number | undefined;
}

interface KeptBy {
  readonly plan: string;
  readonly isPrescribed: boolean;
  readonly yearlyCost: number;
}

/** Parts that both studies have and keep by different plans, in the order of the left one. */
export function planDifferences(left: Compared, right: Compared): PlanDifference[] {
  const after = new Map(partsOf(right).map((part) => [part.key, part]));
  return partsOf(left).flatMap(({ key, structure, component }) => {
    const other = after.get(key)?.component;
    const { chosen, pinned } = component;
    if (!other || other.chosen.plan.id === chosen.plan.id) return [];
    const kept = other.everyPlan().find(({ plan }) => plan.id === chosen.plan.id);
    return [
      {
        ...{ structure, part: component.name },
        left: { plan: chosen.plan.label, isPrescribed: pinned !== undefined, yearlyCost: chosen.yearlyCost },
        right: {
          plan: other.chosen.plan.label,
          isPrescribed: other.pinned !== undefined,
          yearlyCost: other.chosen.yearlyCost,
        },
        leftPlanAtRight: kept?.yearlyCost,
      },
    ];
  });
}

const partsOf = ({ comparison }: Compared) =>
  comparison.structures.flatMap(({ structure, components }) =>
    components.map((component) => ({
      key: JSON.stringify([structure.id, component.name]),
      structure: structure.name,
      component,
    })),
  );
