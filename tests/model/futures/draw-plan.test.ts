import { describe, expect, it } from "vitest";
import {
  type DrawPlan,
  futuresPerBlock,
  futuresPerLake,
  lakesPerBlock,
  type UncertainInput,
} from "../../../src/model/futures/draw-plan.js";
import { latinHypercube } from "../../../src/model/uncertainty/latin-hypercube.js";
import { scrambledSobol } from "../../../src/model/uncertainty/sobol.js";
import { isNet } from "../uncertainty/nets.js";
import { rankCorrelation } from "../uncertainty/rank-correlation.js";
import { blockDraws } from "./block-draws.js";

const uniform = { kind: "uniform", low: 0, high: 1 } as const;
const inputsOf = (count: number, stage: UncertainInput["stage"]): UncertainInput[] =>
  Array.from({ length: count }, (_, index) => ({ id: `${stage}-${index}`, distribution: uniform, stage }));
const planOf = (changes: Partial<DrawPlan>): DrawPlan => ({
  seed: 3,
  sampling: "latin-hypercube",
  inputs: [...inputsOf(6, "lake"), ...inputsOf(3, "chances")],
  groups: [],
  ...changes,
});

describe("the draws of a block", () => {
  it("are a value of each of the lake's inputs for each lake, and of the others for each future", () => {
    const { lake, chances, luck } = blockDraws(planOf({}), 0);
    expect([...lake.values()].map(({ length }) => length)).toEqual(Array(6).fill(lakesPerBlock));
    expect([...chances.values()].map(({ length }) => length)).toEqual(Array(3).fill(futuresPerBlock));
    expect(luck).toHaveLength(futuresPerBlock);
  });

  it.each(["latin-hypercube", "sobol"] as const)(
    "have a value in each of as many equal parts: %s",
    (sampling) => {
      const { lake, luck } = blockDraws(planOf({ sampling, inputs: inputsOf(200, "lake") }), 2);
      for (const column of [...lake.values(), luck]) {
        const parts = column.map((share) => Math.floor(share * column.length));
        expect(parts.toSorted((one, other) => one - other)).toEqual(column.map((_, index) => index));
      }
    },
  );

  it("fill the ranges evenly over the futures of each lake", () => {
    const { chances, luck } = blockDraws(planOf({}), 2);
    for (const column of [...chances.values(), luck]) {
      for (let lake = 0; lake < lakesPerBlock; lake++) {
        const own = column.slice(lake * futuresPerLake, (lake + 1) * futuresPerLake);
        const parts = own.map((share) => Math.floor(share * futuresPerLake));
        expect(parts.toSorted((one, other) => one - other)).toEqual(own.map((_, part) => part));
      }
    }
  });

  it("of more inputs than a Sobol sequence has dimensions have a Latin hypercube's columns beyond them", () => {
    const names = Array.from({ length: 200 }, (_, index) => `lake-${index}/4`);
    const { lake } = blockDraws(planOf({ sampling: "sobol", inputs: inputsOf(200, "lake") }), 4);
    const sobol = scrambledSobol(3, names.slice(0, 128), lakesPerBlock);
    const hypercube = latinHypercube(3, names.slice(128), lakesPerBlock);
    expect([...lake.values()]).toEqual([...sobol.values(), ...hypercube.values()]);
  });

  it("have the first two dimensions of a Sobol sequence for luck and the first input of each future", () => {
    // These, and not the next two, fill every elementary box of 128 points once.
    const { luck, chances } = blockDraws(planOf({ sampling: "sobol" }), 4);
    const [first = [], second = []] = chances.values();
    expect([isNet(luck, first, 7), isNet(first, second, 7)]).toEqual([true, false]);
  });

  it("give luck the first dimension of a Sobol sequence, however many inputs there are", () => {
    const luckWith = (count: number) =>
      blockDraws(planOf({ sampling: "sobol", inputs: inputsOf(count, "chances") }), 1).luck;
    expect(luckWith(150)).toEqual(luckWith(0));
  });

  it("stay as they are if other inputs come before, between or after them, in a group or not", () => {
    const group = { members: ["before", "lake-1", "between", "lake-4", "lake-5"], rankCorrelation: 0.6 };
    const few = blockDraws(planOf({ groups: [group] }), 1);
    const added = (id: string): UncertainInput => ({ id, distribution: uniform, stage: "lake" });
    const [first, ...rest] = inputsOf(6, "lake");
    if (!first) throw new Error("no inputs");
    const inputs = [
      added("before"),
      first,
      added("between"),
      ...rest,
      added("last"),
      ...inputsOf(3, "chances"),
    ];
    const more = blockDraws(planOf({ groups: [group], inputs }), 1);
    for (const [id, column] of few.lake) expect(more.lake.get(id)).toEqual(column);
    expect([...more.chances, more.luck]).toEqual([...few.chances, few.luck]);
  });

  it("do not turn on a group of the other stage, also where a member of their own group is not drawn", () => {
    const own = { members: ["not-drawn", "lake-1"], rankCorrelation: 0.6 };
    const other = { members: ["chances-0", "chances-2", "nor-drawn"], rankCorrelation: 0.6 };
    const lakeOf = (groups: DrawPlan["groups"]) => blockDraws(planOf({ sampling: "sobol", groups }), 1).lake;
    expect(lakeOf([other, own])).toEqual(lakeOf([own]));
  });

  it("of a group move together over the blocks", () => {
    const members = ["lake-0", "lake-3"];
    const plan = planOf({ groups: [{ members, rankCorrelation: 0.7 }] });
    const both = members.map((id) =>
      Array.from({ length: 30 }, (_, block) => blockDraws(plan, block).lake.get(id) ?? []).flat(),
    );
    const [left = [], right = []] = both;
    // 1,920 pairs: a standard error of (1 - 0.49)/sqrt(1920) = 0.012; blocks of few lakes come out a little low.
    expect(Math.abs(rankCorrelation(left, right) - 0.7)).toBeLessThan(0.1);
  });

  it("are others in another block and with another seed", () => {
    const luck = blockDraws(planOf({}), 0).luck;
    expect(blockDraws(planOf({}), 1).luck).not.toEqual(luck);
    expect(blockDraws(planOf({ seed: 4 }), 0).luck).not.toEqual(luck);
    expect(blockDraws(planOf({}), 0).luck).toEqual(luck);
  });
});
