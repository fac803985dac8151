import { describe, expect, it } from "vitest";
import { bareSurface } from "../../../../src/model/mussels/layer.js";
import type { Component } from "../../../../src/model/structures/component.js";
import { serviceLine } from "../../../../src/model/structures/kinds/service-line.js";
import { candidatePlans } from "../../../../src/model/structures/plan.js";
import { Ledger, tellAll } from "../../../../src/model/structures/plans/ledger.js";
import { costsAnything, upstreamShare } from "../../../../src/model/structures/plans/tools.js";
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
  const firstFound = context.density.findIndex((share) => share >= 0.3);
  const last = context.density.length - 1;
  const shareAt = (month: number) => (context.density[month] ?? Number.NaN) / context.matureDensity;

  it("goes with the lake's density, whatever the plan", () => {
    expect(firstFound).toBeGreaterThan(0);
    for (const month of [0, firstFound, last])
      expect(upstreamShare(planBy("leave"), month, context)).toBe(shareAt(month));
  });

  it("passes no filter while mussels are regularly found", () => {
    const filter = planBy("filter");
    expect(upstreamShare(filter, firstFound - 1, context)).toBe(shareAt(firstFound - 1));
    expect(upstreamShare(filter, firstFound, context)).toBe(0);
    expect(upstreamShare(filter, last, context)).toBe(0);
  });

  it("is none in a lake in which nothing lives", () => {
    expect(upstreamShare(planBy("leave"), 0, { ...context, matureDensity: 0 })).toBe(0);
  });
});

describe("a month", () => {
  const part = { isFed: undefined } as Component;
  it.each([
    ["with mussels", part, { ...bareSurface, mass: 1 }, true],
    ["with shells of what died in it", part, { ...bareSurface, killed: 1 }, true],
    ["of a bare part that is fed from upstream", { ...part, isFed: true }, bareSurface, true],
    ["of a bare part", part, bareSurface, false],
  ])("%s costs something: %#", (_what, component, layer, expected) => {
    expect(costsAnything(component, layer)).toBe(expected);
  });

  it("has its lines after those before", () => {
    const [line] = planBy("filter").protection?.monthly[0] ?? [];
    if (!line) throw new Error("a filter costs nothing");
    const ledger = new Ledger();
    for (const each of [line, { ...line, what: "another" }]) tellAll(ledger.tell, [each]);
    const told: string[] = [];
    ledger.tellAgain(({ what }) => told.push(what), 0, ledger.length);
    expect(told).toEqual([line.what, "another"]);
  });
});
