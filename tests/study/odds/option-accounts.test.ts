import { describe, expect, it } from "vitest";
import type { JoinedFutures } from "../../../src/study/odds/joined-futures.js";
import { oddsOfOption } from "../../../src/study/odds/option-odds.js";

type Column = Exclude<keyof JoinedFutures, "found">;

/** Four futures of two blocks. */
function futures(amounts: Partial<Record<Column, readonly number[]>>): JoinedFutures {
  const of = (key: Column) => Float64Array.from(amounts[key] ?? [0, 0, 0, 0]);
  return {
    ...{ expected: of("expected"), cost: of("cost"), program: of("program"), byYear: of("byYear") },
    ...{ everInfested: of("everInfested"), infestedAtEnd: of("infestedAtEnd") },
    ...{ establishedBy: of("establishedBy"), cleanProgram: of("cleanProgram") },
    ...{ duty: of("duty"), policy: of("policy"), other: of("other"), otherCost: of("otherCost") },
  };
}

const ofLakes = { blocks: 2, startYear: 2027, horizon: 1 };

const nothing = futures({
  expected: [100, 120, 140, 160],
  cost: [0, 400, 0, 120],
  duty: [10, 10, 20, 20],
  policy: [40, 40, 40, 40],
  other: [30, 30, 50, 50],
  otherCost: [0, 90, 0, 70],
});
const stations = futures({
  expected: [130, 130, 130, 130],
  cost: [90, 250, 90, 250],
  program: [90, 90, 90, 90],
  duty: [4, 4, 6, 6],
  policy: [15, 15, 15, 15],
  other: [10, 10, 18, 18],
  otherCost: [0, 0, 0, 40],
});

describe("an option in both accounts", () => {
  const { against } = oddsOfOption(stations, nothing, ofLakes);

  it("tells what it avoids apart by what it is, and the parts add up", () => {
    // By hand: benefits -30, -10, 10, 30 have the mean 0, and with the added cost of 90 it avoids 90; duties
    // (6 + 6 + 14 + 14)/4 = 10, policies 25, so that damage is 90 - 10 - 25 = 55; other losses (20 + 20 + 32 + 32)/4 = 26.
    expect(against?.avoidedLoss.value).toBeCloseTo(90, 12);
    expect(against?.avoided).toEqual({ damage: 55, duty: 10, policy: 25, other: 26 });
    expect(against?.ratioWithout.duty).toBeCloseTo(80 / 90, 12);
    expect(against?.ratioWithout.policy).toBeCloseTo(65 / 90, 12);
  });

  it("is weighed in the same futures with the other losses, which change net benefit, ratio and chance", () => {
    // By hand: alone it comes out cheaper in the second future (400 against 250); with the other losses 490 against 250
    // in the second, and 190 against 290 in the fourth: still one of four.
    expect(against?.cheaper.value).toBe(0.25);
    expect(against?.withOther?.netBenefit.value).toBeCloseTo(26, 12);
    expect(against?.withOther?.benefitCostRatio).toBeCloseTo(116 / 90, 12);
    expect(against?.withOther?.cheaper.value).toBe(0.25);
    const spared = futures({ ...plain(nothing), otherCost: [0, 90, 0, 290] });
    // With 290 in the fourth future: 410 against 290.
    expect(oddsOfOption(stations, spared, ofLakes).against?.withOther?.cheaper.value).toBe(0.5);
  });

  it("has no second account where staff entered no other losses", () => {
    const without = futures({ ...plain(nothing), other: [0, 0, 0, 0], otherCost: [0, 0, 0, 0] });
    const own = futures({ ...plain(stations), other: [0, 0, 0, 0], otherCost: [0, 0, 0, 0] });
    expect(oddsOfOption(own, without, ofLakes).against?.withOther).toBeUndefined();
  });
});

const plain = (lists: JoinedFutures): Record<Column, number[]> => ({
  ...{ expected: [...lists.expected], cost: [...lists.cost], program: [...lists.program] },
  ...{ byYear: [...lists.byYear], everInfested: [...lists.everInfested] },
  ...{ establishedBy: [...lists.establishedBy], cleanProgram: [...lists.cleanProgram] },
  ...{ infestedAtEnd: [...lists.infestedAtEnd], duty: [...lists.duty], policy: [...lists.policy] },
  ...{ other: [...lists.other], otherCost: [...lists.otherCost] },
});
