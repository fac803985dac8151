import { describe, expect, it } from "vitest";
import { at, meanOf } from "../../src/lists.js";
import type { Plan } from "../../src/model/structures/component.js";
import type { Structure } from "../../src/model/structures/kinds.js";
import { planTools } from "../../src/model/structures/plans/tools.js";
import { growingPart } from "../../src/model/structures/plans/untouched.js";
import { PlanValue } from "../../src/model/structures/plans/value.js";
import { componentsOf } from "../../src/model/structures/structure.js";
import { planPicks } from "../../src/report/rack/plan-picks.js";
import { runnerUpOf } from "../../src/report/rack/tried-plans.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { exampleDocument, valueAt } from "../study/example.js";
import { editedRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const run = exampleRun("sorrel-bend");
const structure = run.comparison.structures.find(({ structure: { name } }) => name.includes("East bench"));
const rack = at(structure?.components ?? [], 0);

/** Months between the visits of plans that only clean, and whether these come to leaving the rack. */
const visits = new Map(
  rack
    .everyPlan()
    .flatMap(({ plan, comesToLeaving }) =>
      plan.routine.by === "interval" && !plan.protection ? [[plan.routine.months, comesToLeaving]] : [],
    ),
);

/** What a plan without a protection costs a year, reckoned for it alone: nothing of another plan is taken for its own. */
function costAlone(plan: Plan, structure: Structure | undefined, { comparison }: StudyRun, part = rack.name) {
  const [{ contexts }] = comparison.schedules;
  const values = contexts.map((context) => {
    const component = structure && componentsOf(structure, context).find(({ name }) => name === part);
    if (!component) throw new Error(`no ${part}`);
    const value = new PlanValue(plan, planTools(growingPart({ component, context })), undefined);
    while (!value.isWhole) value.reckonOn();
    return value.atLeast;
  });
  return meanOf(values) / contexts[0].planWeights.whole;
}

describe("visits to a rack that lies dry each winter, from 14 November to 2 March", () => {
  it("find nothing in the Decembers of a half-yearly or yearly round, and something in an August", () => {
    // The first date of a round is the last month of its first: of half-yearly ones June, then December.
    // By 2 March the frost has killed what was there, and by June what settled weighs too little.
    expect([...visits].filter(([, isLeft]) => isLeft).map(([months]) => months)).toEqual([
      60, 48, 36, 24, 12, 6,
    ]);
    expect([...visits].filter(([, isLeft]) => !isLeft).map(([months]) => months)).toEqual([4, 3, 2, 1]);
  });

  it("cost nothing where they find nothing, and are then told as leaving it, not as the next best", () => {
    const left = rack.everyPlan().find(({ plan }) => plan.entry.measure === "leave");
    for (const { plan, comesToLeaving, yearlyCost } of rack.everyPlan()) {
      if (!comesToLeaving) continue;
      expect(yearlyCost, plan.id).toBe(left?.yearlyCost);
      expect(costAlone(plan, structure?.structure, run), plan.id).toBeCloseTo(yearlyCost, 6);
    }
    expect(rack.chosen.plan.id).toBe(left?.plan.id);
    expect(runnerUpOf(rack)?.comesToLeaving).toBe(false);
    const { open } = planPicks(run, { structure: structure?.structure.id ?? "", part: rack.name });
    const remarkOf = (label: string) => open?.plans.find((each) => each.label === label)?.remark;
    expect(remarkOf("cleaned by divers every 12 months")).toBe(
      "same as leaving it: no date finds a layer worth a visit",
    );
    expect(remarkOf("cleaned by divers every 4 months")).not.toContain("as leaving it");
    expect(open?.intervals?.chart.title).toContain(
      "Cleaning alone, where it finds a layer worth a visit, costs least every 4 months, ",
    );
    const rows = open?.intervals?.table.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];
    expect(rows.find(([months]) => months === "12")?.[2]).toBe(
      "same as leaving it: no date finds a layer worth a visit",
    );
    expect(rows.find(([months]) => months === "4")?.[2]).not.toContain("as leaving it");
  });

  it("are told to find nothing at any interval where no layer is worth one", () => {
    const few = editedRun([
      ["structures", [valueAt(exampleDocument(), "structures[irrigation-intake]")]],
      ["overrides", [{ id: "cleaning.smallest-layer", value: "0.05 m", reason: "none grows so thick" }]],
    ]);
    const { open } = planPicks(few, { structure: "irrigation-intake", part: rack.name });
    expect(open?.intervals?.chart.title).toContain(
      "Cleaning alone finds no layer worth a visit at any interval tried; the plan chosen costs",
    );
  });
});

describe("plans in a lake too poor in calcium for mussels to become many", () => {
  const few = exampleRun("ninemoss");
  const parts = few.comparison.structures.flatMap(({ structure, components }) =>
    components.map((component) => ({ structure, component })),
  );

  it("cost what leaving the part costs, and none is told as the next best", () => {
    for (const { structure, component } of parts) {
      const [left] = component.everyPlan().filter(({ plan }) => plan.entry.measure === "leave");
      for (const { plan, yearlyCost } of component.everyPlan()) {
        expect(yearlyCost, plan.id).toBe(left?.yearlyCost);
        if (!plan.protection)
          expect(costAlone(plan, structure, few, component.name), plan.id).toBeCloseTo(yearlyCost, 6);
      }
      expect(component.everyPlan().filter(({ comesToLeaving }) => !comesToLeaving)).toEqual([left]);
      const { open } = planPicks(few, { structure: structure.id, part: component.name });
      expect(open?.plans.map(({ mark }) => mark)).not.toContain("next best");
      const inspected = open?.plans.find(({ label }) => label.startsWith("inspected every month"));
      expect(inspected?.remark).toBe("same as leaving it: mussels stay too few for it to begin");
    }
  });
});
