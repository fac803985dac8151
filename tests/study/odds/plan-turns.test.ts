import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import { blockShares, lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import { planTurns } from "../../../src/study/odds/plan-turns.js";
import type { NamedInput } from "../../../src/study/odds/uncertain-inputs.js";

const input = (id: string): NamedInput => ({
  id,
  name: `name of ${id}`,
  stage: "lake",
  distribution: { kind: "uniform", low: 0, high: 1 },
});
const plan = {
  seed: 3,
  sampling: "latin-hypercube" as const,
  groups: [],
  inputs: ["growth", "wage", "area"].map(input),
};
const catalogue = ["none", "divers", "coating"].map((id) => ({ id, name: `name of ${id}` }));
const part = { structure: "intake", structureName: "City intake", part: "conduit" };
const drawn = { plan, catalogue, plans: [{ ...part, plan: { id: "none", name: "name of none" } }] };
const blocks = 8;
const growth = Array.from(
  { length: blocks },
  (_, block) => blockShares(plan, block).lake.get("growth") ?? [],
).flat();
const turnsOf = (planOf: (growth: number, draw: number) => string) =>
  planTurns(
    drawn,
    growth.map((share, draw) => [planOf(share, draw)]),
  );

describe("plans that the draws turn", () => {
  // Identities: each block has as many draws in each sixteenth of a range, so that a quarter of them lies beyond 3/4.
  it("are told with their share and with the input that parts the draws wholly", () => {
    expect(turnsOf((share) => (share > 0.75 ? "divers" : "none"))).toEqual([
      {
        ...part,
        plan: { id: "none", name: "name of none" },
        share: 0.25,
        other: { id: "divers", name: "name of divers", share: 0.25 },
        by: { id: "growth", name: "name of growth", apart: 1 },
      },
    ]);
  });

  it("name the most frequent of several others, and low values by a negative sign", () => {
    const [turn] = turnsOf((share) => (share < 0.125 ? "coating" : share < 0.5 ? "divers" : "none"));
    expect(turn).toMatchObject({ share: 0.5, other: { id: "divers", share: 0.375 }, by: { apart: -1 } });
  });

  it("are none where every draw has the study's own plan", () => {
    expect(turnsOf(() => "none")).toEqual([]);
  });

  it("name no input where few draws differ, nor where no input has to do with it", () => {
    expect(turnsOf((share) => (share > 15 / 16 ? "divers" : "none"))).toMatchObject([
      { share: 1 / 16, by: undefined },
    ]);
    // Every second draw of a block: draws stand in an order of chance.
    expect(turnsOf((_, draw) => (draw % 2 ? "divers" : "none"))).toMatchObject([
      { share: 0.5, by: undefined },
    ]);
  });

  it("have shares that add up, whatever the draws choose", () => {
    const any = fc.array(fc.constantFrom("none", "divers", "coating"), {
      minLength: blocks * lakesPerBlock,
      maxLength: blocks * lakesPerBlock,
    });
    fc.assert(
      fc.property(any, (chosen) => {
        const [turn] = turnsOf((_, draw) => at(chosen, draw));
        const share = chosen.filter((id) => id !== "none").length / chosen.length;
        expect(turn?.share ?? 0).toBe(share);
        if (turn) expect(turn.other.share).toBeGreaterThanOrEqual(share / 2);
      }),
    );
  });
});
