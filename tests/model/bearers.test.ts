import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { sumOf } from "../../src/model/money/line.js";
import { assumed, assumedWith } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { boats, duties, floatingDock, noProgram, program, studyOf, wholeStudy } from "./study.js";

describe("the bearers of an infestation", () => {
  const comparison = compare(wholeStudy, assumed);
  const [balance] = comparison.options;
  if (!balance) throw new Error("no program");

  it("avoid together what the program avoids", () => {
    const avoided = sumOf(balance.bearers.map((each) => each.avoided)).toNumber();
    expect(relativeGap(avoided, balance.avoidedLoss.toNumber())).toBeLessThan(1e-12);
  });

  it("share together the program's added cost, and so does who pays now", () => {
    const added = balance.addedProgramCost.toNumber();
    const shares = sumOf(balance.bearers.map((each) => each.proportionalShare)).toNumber();
    const now = sumOf(balance.bearers.map((each) => each.paysNow)).toNumber();
    expect(relativeGap(shares, added)).toBeLessThan(1e-12);
    expect(relativeGap(now, added)).toBeLessThan(1e-12);
  });

  it("carry shares in proportion to what they avoid", () => {
    const ratio = balance.addedProgramCost.dividedBy(balance.avoidedLoss).toNumber();
    for (const { avoided, proportionalShare, lossWithout, lossWith } of balance.bearers) {
      expect(lossWithout.minus(lossWith).equals(avoided)).toBe(true);
      if (avoided.isZero()) expect(proportionalShare.isZero()).toBe(true);
      else expect(relativeGap(proportionalShare.dividedBy(avoided).toNumber(), ratio)).toBeLessThan(1e-12);
    }
  });

  it("lose together what the infestation is expected to cost, with and without the program", () => {
    const without = sumOf(balance.bearers.map((each) => each.lossWithout)).toNumber();
    const remaining = sumOf(balance.bearers.map((each) => each.lossWith)).toNumber();
    expect(relativeGap(without, comparison.baseline.presentValue.infestation.toNumber())).toBeLessThan(1e-12);
    expect(relativeGap(remaining, balance.result.presentValue.infestation.toNumber())).toBeLessThan(1e-12);
  });
});

describe("the list of bearers", () => {
  const namesOf = (input: Parameters<typeof compare>[0], source = assumed) =>
    compare(input, source).options.flatMap(({ bearers }) => bearers.map(({ id }) => id));

  it("holds who bears a loss and who pays for the program, and no one else", () => {
    expect(namesOf(studyOf([floatingDock]))).toEqual(["authority", "marina"]);
    expect(namesOf(studyOf([duties]))).toEqual(["authority"]);
  });

  it("asks nobody for a share where nothing is avoided", () => {
    const source = assumedWith({ "arrival.founding-unknown": 0 });
    const input = studyOf([floatingDock], {
      boats: { ...boats, otherWays: [] },
      options: [noProgram, program],
    });
    for (const { bearers } of compare(input, source).options) {
      expect(bearers.every(({ proportionalShare }) => proportionalShare.isZero())).toBe(true);
    }
  });
});
