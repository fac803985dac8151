import { describe, expect, it } from "vitest";
import { Stream } from "../../src/model/cost-streams.js";
import type { InfestationCost } from "../../src/model/infestation-cost.js";
import type { PriceGroup } from "../../src/model/money/price-group.js";
import type { OptionCosts } from "../../src/model/option-costs.js";
import { accountNumbers, costByEstablishment, type OptionNumbers } from "../../src/model/option-numbers.js";
import { expectedLosses } from "../../src/model/present-value.js";
import { stateProbabilities } from "../../src/model/risk/state-probabilities.js";

/** Cents of two years: what is lost, what is done, and of both the part whose prices rise. */
const streamOf = (harm: number[], control: number[], group?: PriceGroup, [lost, done] = [harm, control]) =>
  new Stream({
    harm,
    control,
    rising: new Map(group ? [[group, { harm: lost ?? [], control: done ?? [], rising: new Map() }]] : []),
  });

const numbers: OptionNumbers = {
  factors: [1, 1],
  programInYear: [0, 0],
  keptShare: 0.5,
  knownAtStart: false,
  scheduleInYear: [0, 0],
  losses: [],
  // Detected at once, and half of the attempts of the first year succeed.
  detection: { chanceByAge: [1], containment: { success: 0.5, latestAge: 1 } },
  attemptInYear: [0, 0],
};

describe("what an option costs by the year in which mussels establish", () => {
  const establishedWith = (amounts: Partial<OptionNumbers>) =>
    costByEstablishment({ ...numbers, ...amounts }).established;

  it("counts what is due in some years alone, by hand", () => {
    // Established in year 1, half are there in year 2; established in year 2, all are.
    expect(establishedWith({ scheduleInYear: [0, 50] })).toEqual([25, 50]);
    expect(establishedWith({ attemptInYear: [0, 100] })).toEqual([0, 100]);
    expect(establishedWith({ attemptInYear: [80, 0] })).toEqual([80, 0]);
    // Half of the program goes on in year 2 in the half of lakes in which mussels are; the first year is paid in full.
    expect(establishedWith({ programInYear: [0, 40] })).toEqual([10, 40]);
  });
});

describe("an account of an infestation alone", () => {
  const account = { factors: [1, 1], rises: new Map([["wages" as const, [1.5, 2]]]) };
  const costsOf = (unnoticed?: Stream, noticed?: Stream) => {
    const withAccount = (stream?: Stream) => ({ byAccount: new Map(stream ? [["duty", stream]] : []) });
    // The account reads these of what an infestation costs, and nothing else.
    const costs = { unnoticed: withAccount(unnoticed), schedule: { infestation: withAccount(noticed) } };
    return costs as unknown as OptionCosts & { readonly unnoticed: InfestationCost };
  };
  const own = { ...numbers, programInYear: [7, 7], scheduleInYear: [7, 7], attemptInYear: [7, 7] };
  const lossesOf = (...streams: Parameters<typeof costsOf>) =>
    accountNumbers("duty", own, costsOf(...streams), account)?.losses;

  it("is absent where nothing is entered in it, under any levels", () => {
    expect(lossesOf()).toBeUndefined();
  });

  it("is there where it is entered under the lake's own levels alone, or under the option's", () => {
    const stream = streamOf([1000, 2000], [300, 400]);
    expect(lossesOf(stream)).toEqual([{ unnoticed: [10, 20], noticed: [0, 0], share: undefined }]);
    expect(lossesOf(undefined, stream)).toEqual([{ unnoticed: [0, 0], noticed: [13, 24], share: undefined }]);
  });

  it("holds the part whose prices rise by how much they have, before the mussels are detected or after", () => {
    const [rising, even] = [streamOf([1000, 0], [0, 0], "wages"), streamOf([0, 0], [300, 0])];
    const share = [0.5, 1];
    expect(lossesOf(rising, even)?.slice(1)).toEqual([{ unnoticed: [10, 0], noticed: [0, 0], share }]);
    expect(lossesOf(even, rising)?.slice(1)).toEqual([{ unnoticed: [0, 0], noticed: [10, 0], share }]);
    expect(lossesOf(even, even)).toHaveLength(1);
  });

  it("has no program, schedule or attempts beside it", () => {
    const alone = accountNumbers("duty", own, costsOf(streamOf([1, 1], [0, 0])), account);
    expect(alone).toMatchObject({ programInYear: [0, 0], scheduleInYear: [0, 0], attemptInYear: [0, 0] });
  });
});

describe("the loss that is expected of each year", () => {
  it("rises with the prices of what is lost undetected alone, and of what is done alone, by hand", () => {
    const states = stateProbabilities([1, 0], { chanceByAge: [0.5] });
    const unnoticed = streamOf([1000, 2000], [0, 0], "energy", [
      [1000, 0],
      [0, 0],
    ]);
    const noticed = streamOf([1000, 2000], [400, 600], "wages", [
      [0, 0],
      [400, 600],
    ]);
    const rises = new Map<PriceGroup, readonly number[]>([
      ["energy", [1.5, 1.5]],
      ["wages", [2, 3]],
      ["treatment", [9, 9]],
    ]);
    // Half detected in year 1 and all in year 2: 5 + 7, then 26. Energy adds half of the 5 in year 1; wages add all of the
    // 2 of year 1, and twice the 6 of year 2.
    expect(expectedLosses({ unnoticed, noticed }, states, rises)).toEqual([16.5, 38]);
  });
});
