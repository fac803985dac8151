import { describe, expect, it } from "vitest";
import { at } from "../../../../src/lists.js";
import type { Plan } from "../../../../src/model/structures/component.js";
import { candidatePlans } from "../../../../src/model/structures/plan.js";
import { contendersOf, impossibleIn } from "../../../../src/model/structures/plans/contenders.js";
import type { SurfacePart } from "../../../../src/model/structures/plans/untouched.js";
import { componentsOf } from "../../../../src/model/structures/structure.js";
import { contextOf } from "../../contexts.js";
import { drawnDownLake, productiveLake } from "../../lakes.js";
import { gravityIntake } from "../../study.js";

/** The conduit of an intake at 95 m: bare in the winter of one lake, under water all year in the other. */
const [dry, wet] = [drawnDownLake, productiveLake].map((lake) => {
  const context = contextOf(lake, 12);
  const structure = { ...gravityIntake, elevation: 95, oxidantAllowed: true };
  const component = componentsOf(structure, context).find(({ kind }) => kind === "conduit");
  if (!component) throw new Error("no conduit");
  return { component, context, surface: context.growing(component.surface) };
}) as [SurfacePart, SurfacePart];
const firstOf = (_year: number, plans: readonly Plan[]) => at(plans, 0);

describe("the plans of a part in several operating years", () => {
  it("are those that any of them allows, in the order of the catalogue, each once", () => {
    const ids = candidatePlans(dry.component, dry.context).plans.map(({ id }) => id);
    expect(ids).toContain("dry");
    for (const parts of [
      [dry, wet],
      [wet, dry],
    ]) {
      const contenders = contendersOf(parts, firstOf);
      expect(contenders.map(({ plan }) => plan.id)).toEqual(ids);
    }
    const inWet = candidatePlans(wet.component, wet.context).plans.map(({ id }) => id);
    expect(inWet).not.toContain("dry");
    expect(contendersOf([wet], firstOf).map(({ plan }) => plan.id)).toEqual(inWet);
    const [, second] = contendersOf([wet, dry], firstOf).find(({ plan }) => plan.id === "dry")?.byYear ?? [];
    expect(second?.id).toBe("dry");
  });

  it("have those against which something stands in all of them, with what stands in the first", () => {
    const idsOf = (...parts: readonly SurfacePart[]) => impossibleIn(parts).map(({ id }) => id);
    expect(idsOf(dry)).not.toContain("dry");
    expect(idsOf(wet)).toContain("dry");
    expect(idsOf(wet, dry)).toEqual(idsOf(dry));
    expect(idsOf(dry, wet)).toEqual(idsOf(dry));
    expect(idsOf(wet, wet)).toEqual(idsOf(wet));
    expect(impossibleIn([wet, wet]).find(({ id }) => id === "dry")?.reason).toBe("the water never leaves it");
    expect(impossibleIn([])).toEqual([]);
  });
});

describe("the way out of a year that does not allow a plan", () => {
  it("is sought among plans that install nothing and are done within the year", () => {
    const parts = [dry, wet];
    const offered: (readonly string[])[] = [];
    const contenders = contendersOf(parts, (year, plans) => {
      offered[year] = plans.map(({ id }) => id);
      const [first] = plans;
      if (!first) throw new Error("no way out");
      return first;
    });
    const all = candidatePlans(wet.component, wet.context).plans;
    const ids = offered[1] ?? [];
    const others = all.filter(({ id }) => !ids.includes(id));
    const isInstalled = ({ entry }: (typeof all)[number]) => "capital" in entry.numbers;
    const isLong = ({ routine }: (typeof all)[number]) => routine.by === "interval" && routine.months > 12;
    expect(ids).toContain("leave");
    expect(others.filter((plan) => isInstalled(plan) && !isLong(plan))).not.toEqual([]);
    expect(others.filter((plan) => isLong(plan) && !isInstalled(plan))).not.toEqual([]);
    expect(others.every((plan) => isInstalled(plan) || isLong(plan))).toBe(true);
    expect(all.filter(({ id }) => ids.includes(id)).some((plan) => isInstalled(plan) || isLong(plan))).toBe(
      false,
    );
    expect(contenders.find(({ plan }) => plan.id === "dry")?.byYear.map(({ id }) => id)).toEqual([
      "dry",
      ids[0],
    ]);
    // The dry year allows the plan itself.
    expect(offered[0]).toBeUndefined();
  });
});
