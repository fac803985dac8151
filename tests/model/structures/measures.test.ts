import { pmt } from "financial";
import { describe, expect, it, test } from "vitest";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import type { InstalledPlan } from "../../../src/model/structures/catalogue.js";
import type { Component, Priced } from "../../../src/model/structures/component.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { costAtSize, seasonDose } from "../../../src/model/structures/oxidant.js";
import { candidatePlans } from "../../../src/model/structures/plan.js";
import { removalLines, shellLines, workLines } from "../../../src/model/structures/plan-work.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith, idsOfPlanBy } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { relativeGap } from "../near.js";
import { floatingDock, gravityIntake, plant, pumpedIntake } from "../study.js";
import { costOf } from "./followed-plainly.js";

/** Prices are carried to any size. */
const context = contextOf(productiveLake, 5, assumedWith({ "plan.size-reach": 1000 }));

function partOf(structure: Structure, kind: Component["kind"]): Component {
  const part = componentsOf(structure, context).find((each) => each.kind === kind);
  if (!part) throw new Error(`no ${kind}`);
  return part;
}

const cooling = partOf(
  { ...plant, coolingWater: { ...plant.coolingWater, oxidantAllowed: true } },
  "service-line",
);
const conduit = partOf(pumpedIntake, "conduit");

function planOf(part: Component, id: string) {
  const plan = candidatePlans(part, context).plans.find((each) => each.id === id);
  if (!plan) throw new Error(`no plan ${id}`);
  return plan;
}

/** What an installation costs a year: paid off over its life by numpy-financial's pmt, as ported to npm `financial`. */
function yearOf(
  { capital, referenceSize, sizeExponent, life, upkeep }: InstalledPlan["numbers"],
  size: number,
) {
  const reference = assumed(referenceSize);
  const paid = assumed(capital) * reference * (size / reference) ** assumed(sizeExponent);
  return -pmt(0.03, assumed(life), paid) + assumed(upkeep) * paid;
}

describe("an installation is priced by its size", () => {
  test.each([
    // By hand: two cooling lines of 60 m and 100 mm are 37.70 m2 of wall, and take 16 L/s.
    ["second line by the wall", cooling, "second-line-6", idsOfPlanBy("second-line"), 2 * Math.PI * 0.1 * 60],
    ["strainer by the water", cooling, "strainer-uv", idsOfPlanBy("filter"), 0.016],
    ["heat by the water", cooling, "heat-12", idsOfPlanBy("heat"), 0.016],
    ["coating by the wall", conduit, "foul-release", idsOfPlanBy("coating"), Math.PI * 1.1 * 1500],
  ])("%s", (_name, part, id, numbers, size) => {
    const installed = (planOf(part, id).protection?.monthly ?? [])
      .flat()
      .filter(({ what }) => !what.includes("outages"));
    expect(installed).toHaveLength(12);
    expect(relativeGap(costOf(installed), yearOf(numbers, size))).toBeLessThan(1e-9);
  });

  it("is what holds settlers off, by its own share, where it is a coating or a strainer", () => {
    const shareOf = (part: Component, id: string) => planOf(part, id).protection?.settlementFactor;
    expect(shareOf(conduit, "foul-release")).toBe(assumed("plan.foul-release.settlement-factor"));
    expect(shareOf(cooling, "strainer-uv")).toBe(assumed("plan.strainer-uv.settlement-factor"));
    for (const id of ["second-line-6", "heat-12", "oxidant-end", "trigger"])
      expect(shareOf(cooling, id)).toBe(1);
    expect(planOf(cooling, "divers-12").protection).toBeUndefined();
  });
});

describe("inspections", () => {
  it("are paid for each piece in each month", () => {
    // By hand: two lines, twelve months, at the price of an inspection.
    const { monthly = [] } = planOf(cooling, "trigger").protection ?? {};
    expect(costOf(monthly.flat())).toBeCloseTo(2 * 12 * assumed("plan.trigger.inspection"), 6);
  });
});

describe("a dose of oxidant", () => {
  it("is paid at the unit cost of the year's mean flow, each day counted once", () => {
    // By hand, a tenth of the demand times days of its months: 0.5 x 31 + 0.5 x 28 + 0.6 x 31 + 0.7 x 30 + 0.9 x 31 + 1.1 x 30 + 1.2 x 31
    // + 1.2 x 31 + 1 x 30 + 0.7 x 31 + 0.6 x 30 + 0.5 x 31 = 289.6 over 365 days.
    const tenth = { ...pumpedIntake, demand: pumpedIntake.demand.map((flow) => flow / 10) };
    const [line] = seasonDose(partOf(tenth, "conduit"), context)(6);
    const ends = {
      small: { cost: assumed("oxidant.small-plant-cost"), flow: assumed("oxidant.small-plant-flow") },
      large: { cost: assumed("oxidant.large-plant-cost"), flow: assumed("oxidant.large-plant-flow") },
    };
    // The published cost is read as one over the year's water; half of that is dosed.
    expect(line?.unitRate).toBeCloseTo(
      costAtSize(28.96 / 365, ends) / assumed("oxidant.published-season"),
      12,
    );
    expect(28.96 / 365).toBeGreaterThan(ends.small.flow);
    expect(28.96 / 365).toBeLessThan(ends.large.flow);
    expect(line?.quantity).toBeCloseTo(0.12 * 31 * 86_400, 4);
  });

  it("is none where the study allows none", () => {
    expect(seasonDose(partOf(gravityIntake, "conduit"), context)(6)).toEqual([]);
  });

  it("costs its feed and the water treated", () => {
    const { monthly = [] } = planOf(cooling, "oxidant-end").protection ?? {};
    const dosed = monthly.flat().filter(({ quantityKind }) => quantityKind === "volume");
    expect(dosed).toHaveLength(1);
    const feed = yearOf(idsOfPlanBy("oxidant-end"), 0.016);
    const outages = monthly.flat().filter(({ what }) => what.includes("outages"));
    expect(relativeGap(costOf(monthly.flat()), feed + costOf(dosed) + costOf(outages))).toBeLessThan(1e-9);
    expect(dosed[0]?.quantity).toBeGreaterThan(0);
  });
});

describe("the work of a treatment", () => {
  const workOf = (id: string, part = cooling, source = context): Priced[] => [
    ...workLines(planOf(part, id).entry, part, source, 6),
  ];

  it("of a second line is the hours of changing each over, at the maintenance rate", () => {
    // By hand: two lines.
    const lines = workOf("second-line-6");
    const hours = 2 * assumed("plan.second-line.switching-hours");
    expect(lines.map(({ quantity }) => quantity)).toEqual([hours]);
    expect(costOf(lines)).toBeCloseTo(hours * assumed("labour.maintenance-rate"), 9);
  });

  it("with heat warms the flow for its hours", () => {
    // By hand: 16 L/s for three hours are 172.8 m3, from the 12 degrees of deep water to the killing temperature, 1.163 kWh per m3 and kelvin.
    const longer = { ...context, assumed: assumedWith({ "plan.heat.hours": 3 }) };
    const [heating] = workOf("heat-12", cooling, longer).filter(({ type }) => type === "protection");
    const warming = assumed("plan.heat.temperature") - 12;
    expect(heating?.quantity).toBeCloseTo(172.8 * warming * assumed("water.heat-capacity"), 6);
    expect(relativeGap(assumed("water.heat-capacity"), 4186 / 3600)).toBeLessThan(0.002);
  });

  it("on a coated part is a share of the cleaning of a bare one", () => {
    const [hull] = componentsOf(floatingDock, context);
    if (!hull) throw new Error("no hull");
    const share = assumed("plan.foul-release.cleaning-share");
    const bare = costOf(workOf("divers-12", hull));
    expect(costOf(workOf("foul-release-12", hull))).toBeCloseTo(share * bare, 6);
    expect(bare).toBeGreaterThan(0);
  });
});

describe("what is carted away from a bare surface", () => {
  it("is nothing", () => {
    expect(removalLines(planOf(cooling, "divers-12"), bareSurface, cooling, context)).toEqual([]);
    expect(shellLines(bareSurface, cooling, context)).toEqual([]);
  });

  it("is, of what a month killed, its shells", () => {
    // By hand: 2 kg/m2 on two lines of 60 m and 100 mm.
    const killed: Layer = { ...bareSurface, killed: 2 };
    const [line] = shellLines(killed, cooling, context);
    const wall = 2 * Math.PI * 0.1 * 60;
    expect(line?.quantity).toBeCloseTo(2 * wall * assumed("shell.shell-share"), 9);
  });
});
