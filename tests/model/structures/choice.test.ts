import { describe, expect, it } from "vitest";
import { bareSurface, thickestOf } from "../../../src/model/mussels/layer.js";
import type { PinnedPlan, PlanEntry } from "../../../src/model/structures/catalogue.js";
import type { Component, Limit } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import type { Intake } from "../../../src/model/structures/inputs.js";
import { noLimit } from "../../../src/model/structures/limits.js";
import { nearLimit } from "../../../src/model/structures/plans/course.js";
import { layerIn } from "../../../src/model/structures/plans/course-months.js";
import { type PartYear, thickest, untouchedCourse } from "../../../src/model/structures/plans/untouched.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith, idsOfPlanBy } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake } from "../lakes.js";
import { floatingDock, gravityIntake } from "../study.js";
import { keptPart } from "./kept.js";

const lake = contextOf(drawnDownLake, 10);

function rackOf(structure: Intake, context: LakeContext): Component {
  const found = componentsOf(structure, context).find(({ kind }) => kind === "rack");
  if (!found) throw new Error("no rack");
  return found;
}

function hullIn(context: LakeContext): PartYear {
  const [component] = componentsOf(floatingDock, context);
  if (!component) throw new Error("no hull");
  return { component, context };
}

/** The rack of an intake, kept in service. @param limit its own if left out */
const keptRack = (context: LakeContext, limit?: Component["limit"], pinned?: readonly PinnedPlan[]) =>
  keptPart(() => {
    const made = rackOf(gravityIntake, context);
    return [{ component: { ...made, limit: limit ?? made.limit }, context }];
  }, pinned);

const rack = rackOf(gravityIntake, lake);
const anyLayer: Limit = { broken: "a limit that any layer passes", assumptionIds: [] };

describe("the choice among plans", () => {
  it("says which limit the cheapest plan passes, where none keeps it", () => {
    const { chosen, everyPlan } = keptRack(lake, (meet) => meet(anyLayer, Infinity, 1));
    expect(chosen.brokenLimit).toBe(anyLayer.broken);
    const costs = everyPlan().map(({ yearlyCost }) => yearlyCost);
    expect(chosen.yearlyCost).toBe(Math.min(...costs));
  });

  it("tells the limit that a plan comes nearest to, and none of a part without limits", () => {
    const toldOf = (limit: Component["limit"]) =>
      keptRack(lake, limit)
        .everyPlan()
        .map(({ nearestLimit, brokenLimit }) => ({ nearestLimit, brokenLimit }));
    const nearestLimit = { words: anyLayer.broken, load: 0.5 };
    expect(toldOf((meet) => meet(anyLayer, 0.5, 1))).toContainEqual({
      nearestLimit,
      brokenLimit: undefined,
    });
    const met = { nearestLimit: { words: anyLayer.broken, load: 1 }, brokenLimit: undefined };
    expect(toldOf((meet) => meet(anyLayer, 1, 1))).toContainEqual(met);
    const none = { nearestLimit: undefined, brokenLimit: undefined };
    const untold = toldOf(noLimit);
    expect(untold.length).toBeGreaterThan(3);
    expect(untold).toEqual(untold.map(() => none));
  });

  it("falls on the first listed of plans that cost the same", () => {
    const { chosen } = keptRack(lake);
    const again = { ...chosen.plan.entry, id: "again" };
    const idOfFirst = (plans: LakeContext["plans"]) => keptRack({ ...lake, plans }).chosen.plan.entry.id;
    expect(idOfFirst([...lake.plans, again])).toBe(chosen.plan.entry.id);
    expect(idOfFirst([again, ...lake.plans])).toBe("again");
  });

  it("never falls on a plan whose cost is no number, which no study gives, wherever it is listed", () => {
    const { capital } = idsOfPlanBy("coating");
    const context = contextOf(drawnDownLake, 10, assumedWith({ [capital]: Number.NaN }));
    const isUnknown = ({ numbers }: PlanEntry) => "capital" in numbers && numbers.capital === capital;
    const unknown = context.plans.filter(isUnknown);
    const others = context.plans.filter((entry) => !isUnknown(entry));
    const chosenOf = (plans: LakeContext["plans"]) => keptPart(() => [hullIn({ ...context, plans })]).chosen;
    expect(chosenOf(unknown).yearlyCost).toBeNaN();
    const { plan, yearlyCost } = chosenOf(others);
    for (let place = 0; place <= others.length; place++) {
      const found = chosenOf(others.toSpliced(place, 0, ...unknown));
      expect([found.plan.id, found.yearlyCost]).toEqual([plan.id, yearlyCost]);
    }
  });

  it("is free for a part where the study prescribes a plan for another", () => {
    const pinned = [{ part: "conduit", plan: "divers-1", reason: "contract" }];
    const free = keptRack(lake);
    const found = keptRack(lake, undefined, pinned);
    expect(found.pinned).toBeUndefined();
    expect(found.chosen.plan.id).toBe(free.chosen.plan.id);
  });
});

describe("coming near a limit", () => {
  const { limitShare } = idsOfPlanBy("trigger");
  const routine = { by: "trigger", limitShare } as const;
  const share = assumed(limitShare);
  const layer = { ...bareSurface, number: 100, lengthMm: 20 };
  const limitOf = 10;

  it.each(["cover", "mass", "thickness"] as const)("is the set share of the %s that breaks it", (measure) => {
    const limited: Component = {
      ...rack,
      limit: (meet, grown) => meet(anyLayer, grown[measure] > limitOf ? Infinity : 0, 1),
    };
    const isNear = nearLimit(routine, limited, lake);
    const of = (value: number) => ({ ...layer, mass: 1, [measure]: value });
    expect(isNear(of(1.0001 * share * limitOf), 0)).toBe(true);
    expect(isNear(of(0.9999 * share * limitOf), 0)).toBe(false);
  });

  it("is never told of a bare surface, nor of a part without limits", () => {
    const never: Component = { ...rack, limit: (meet) => meet(anyLayer, Infinity, 1) };
    expect(nearLimit(routine, never, lake)(bareSurface, 0)).toBe(false);
    const { component: hull } = hullIn(lake);
    expect(nearLimit(routine, hull, lake)({ ...layer, mass: 12, cover: 3, thickness: 0.02 }, 6)).toBe(false);
  });
});

describe("the thickest layer", () => {
  const layers = [3, 1, 4, 1, 5].map((thickness) => ({ ...bareSurface, thickness }));
  const { component: hull } = hullIn(lake);
  const course = untouchedCourse(1, { component: hull, context: lake, surface: lake.growing(hull.surface) });

  it("of a list is the one of all that are there, and the bare surface where there are none", () => {
    expect(thickestOf(layers)).toBe(layers[4]);
    expect(thickestOf([])).toBe(bareSurface);
    expect(thickestOf([{ ...bareSurface, killed: 2 }])).toBe(bareSurface);
  });

  it.each([
    [0, 120],
    [40, 60],
    [71, 72],
  ])("of a course is that from month %d up to, but without, %d", (from, to) => {
    const told = Array.from({ length: to - from }, (_, month) => layerIn(course, from + month).thickness);
    const { thickness } = thickest(course, from, to);
    expect(thickness).toBe(Math.max(...told));
    expect(thickness).toBeGreaterThan(0);
  });

  it("of no months is the bare surface", () => {
    expect(thickest(course, 60, 60)).toBe(bareSurface);
  });
});
