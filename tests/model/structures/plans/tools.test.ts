import { describe, expect, it } from "vitest";
import { at, sumOf } from "../../../../src/lists.js";
import type { GrownMonths } from "../../../../src/model/mussels/grown-months.js";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import type { Component } from "../../../../src/model/structures/component.js";
import { serviceLine } from "../../../../src/model/structures/kinds/service-line.js";
import { noLimit, noLoad } from "../../../../src/model/structures/limits.js";
import { candidatePlans } from "../../../../src/model/structures/plan.js";
import { courseOf } from "../../../../src/model/structures/plans/course.js";
import { courseFrom } from "../../../../src/model/structures/plans/course-months.js";
import { Ledger, tellAll } from "../../../../src/model/structures/plans/ledger.js";
import { planTools, upstreamShare } from "../../../../src/model/structures/plans/tools.js";
import { assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { sealWater } from "../../study.js";

const context = contextOf(productiveLake, 12, assumedWith({ "protection.start-density": 0.3 }));

function planBy(measure: string) {
  const [component] = serviceLine.components(sealWater, context);
  const plan =
    component && candidatePlans(component, context).plans.find(({ entry }) => entry.measure === measure);
  if (!plan) throw new Error(`no plan by ${measure}`);
  return plan;
}

describe("what comes down from upstream", () => {
  const fed = { component: { isFed: true } as Component, context };
  const firstFound = context.density.findIndex((share) => share >= 0.3);
  const last = context.density.length - 1;
  const shareAt = (month: number) => (context.density[month] ?? Number.NaN) / context.matureDensity;

  it("goes with the lake's density, whatever the plan", () => {
    expect(firstFound).toBeGreaterThan(0);
    for (const month of [0, firstFound, last])
      expect(upstreamShare(planBy("leave"), month, fed)).toBe(shareAt(month));
  });

  it("passes no filter while mussels are regularly found", () => {
    const filter = planBy("filter");
    expect(upstreamShare(filter, firstFound - 1, fed)).toBe(shareAt(firstFound - 1));
    expect(upstreamShare(filter, firstFound, fed)).toBe(0);
    expect(upstreamShare(filter, last, fed)).toBe(0);
  });

  it("reaches no part that nothing is upstream of", () => {
    const apart = { ...fed, component: { isFed: undefined } as Component };
    expect(upstreamShare(planBy("leave"), last, apart)).toBe(0);
  });

  it("is a share of what the lake has when it is densest", () => {
    const fewer = { ...context, matureDensity: context.matureDensity * 4 };
    expect(upstreamShare(planBy("leave"), last, { ...fed, context: fewer })).toBeCloseTo(
      shareAt(last) / 4,
      12,
    );
  });

  it("is none in a lake in which nothing lives", () => {
    expect(upstreamShare(planBy("leave"), 0, { ...fed, context: { ...context, matureDensity: 0 } })).toBe(0);
  });
});

describe("what a year of a course costs", () => {
  it("is the same whichever other course was asked for before", () => {
    const [line] = serviceLine.components(sealWater, context);
    if (!line) throw new Error("no line");
    const { plans } = candidatePlans(line, context);
    const dated = plans.filter(({ routine, protection }) => routine.by === "interval" && !protection);
    const made = () => planTools({ component: line, context, surface: context.growing(line.surface) });
    const yearOf = (tools: ReturnType<typeof made>, plan: (typeof plans)[number], year: number) =>
      tools.inYear(year, plan, courseOf(plan, tools.untouched(1), tools)).cost.slice();
    const shared = made();
    let told = 0;
    for (const year of [0, 5, 11]) {
      for (const plan of dated) {
        const cost = yearOf(shared, plan, year);
        expect(cost, `${plan.id}, year ${year}`).toEqual(yearOf(made(), plan, year));
        told += cost[0] ?? Number.NaN;
      }
    }
    expect(dated.length).toBeGreaterThan(2);
    expect(told).toBeGreaterThan(0);
  });
});

const pieces = {
  what: "pieces",
  type: "loss",
  quantityKind: "hours",
  unitRate: 1,
  assumptionIds: [],
} as const;

describe("a month", () => {
  const [line] = serviceLine.components(sealWater, context);
  if (!line) throw new Error("no line");
  const part: Component = { ...line, isFed: undefined, losses: (tell) => tell(pieces, 1), limit: noLimit };
  /** A run of one month that left a layer. */
  const grownOnce = ({ number, cover, mass, killed, shed }: Layer) =>
    ({
      block: Float64Array.of(number, cover, mass, killed, shed),
      room: 0,
      count: 1,
      parameters: context.growth,
    }) as unknown as GrownMonths;
  it.each([
    ["with mussels", part, { ...bareSurface, number: 1, mass: 1 }, true],
    ["with shells of what died in it", part, { ...bareSurface, killed: 1 }, true],
    ["of a bare part that is fed from upstream", { ...part, isFed: true }, bareSurface, true],
    ["of a bare part", part, bareSurface, false],
  ])("%s costs something: %#", (_what, component, layer, expected) => {
    const tools = planTools({ component, context, surface: context.growing(component.surface) });
    const course = courseFrom(grownOnce(layer), { months: 12, cycle: 0 });
    let told = 0;
    tools.tellMonth((_, quantity) => (told += quantity), planBy("leave"), course, 0);
    expect(told > 0).toBe(expected);
  });

  it("of a part fed from upstream costs what each plan lets come down, also on the same layers", () => {
    const component: Component = {
      ...line,
      isFed: true,
      losses: (tell, _layer, _month, upstream = 0) => tell(pieces, upstream),
    };
    const tools = planTools({ component, context, surface: context.growing(component.surface) });
    const course = tools.untouched(1);
    const [left, filtered] = ["leave", "filter"].map(
      (measure) => tools.inYear(11, planBy(measure), course).cost[0] ?? Number.NaN,
    );
    // By hand: one a month in a settled lake, of which the filter lets none through.
    const shares = context.density.slice(132).map((share) => share / context.matureDensity);
    expect((left ?? Number.NaN) - (filtered ?? Number.NaN)).toBeCloseTo(sumOf(shares), 9);
    expect(sumOf(shares)).toBeGreaterThan(11);
  });

  it("of a part fed from upstream costs nothing behind a filter that is there from the first", () => {
    const soon = contextOf(productiveLake, 12, assumedWith({ "protection.start-density": 0 }));
    const component: Component = {
      ...line,
      isFed: true,
      limit: noLimit,
      losses: (tell, _layer, _month, upstream = 0) => tell(pieces, upstream),
    };
    const tools = planTools({ component, context: soon, surface: soon.growing(component.surface) });
    const costBy = (measure: string) => tools.inYear(0, planBy(measure), tools.untouched(1)).cost[0];
    expect(costBy("filter")).toBe(0);
    expect(costBy("leave")).toBeGreaterThan(0);
  });

  it("of a year comes nearest to the first of the limits that are as near, by hand", () => {
    const limits = Array.from({ length: 12 }, (_, month) => ({
      broken: `limit ${month}`,
      assumptionIds: [],
    }));
    const component: Component = {
      ...line,
      limit: (meet, _layer, month) => meet(at(limits, month), month === 6 || month === 8 ? 0.7 : 0.3, 1),
    };
    const nearestOf = (limit: Component["limit"], year: number) => {
      const tools = planTools({
        component: { ...component, limit },
        context,
        surface: context.growing(component.surface),
      });
      return tools.inYear(year, planBy("leave"), tools.untouched(1)).nearest;
    };
    expect(nearestOf(component.limit, 11)).toEqual({ limit: limits[6], load: 0.7 });
    // In the first year nothing settles before April.
    expect(nearestOf((meet, _layer, month) => meet(at(limits, month), 1, month + 1), 0)).toEqual({
      limit: limits[3],
      load: 1 / 4,
    });
    expect(nearestOf(noLimit, 11)).toBe(noLoad);
  });

  it("has its lines after those before", () => {
    const [line] = planBy("filter").protection?.monthly[0] ?? [];
    if (!line) throw new Error("a filter costs nothing");
    const ledger = new Ledger(context.planWeights, context.growth.room);
    const months = [line, { ...line, what: "another" }].map((each) => {
      tellAll(ledger.tell, [each]);
      return ledger.endMonth(noLoad);
    });
    const told: string[] = [];
    for (const month of months) ledger.tellAgain(({ what }) => told.push(`${month}: ${what}`), month);
    expect(told).toEqual([`0: ${line.what}`, "1: another"]);
  });
});
