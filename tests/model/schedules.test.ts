import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import type { StudyInput } from "../../src/model/inputs.js";
import type { Schedule } from "../../src/model/lake/lake.js";
import { dailyElevations } from "../../src/model/lake/levels.js";
import { totalOf } from "../../src/model/money/line.js";
import { kindOf } from "../../src/model/structures/kinds.js";
import { structureResult } from "../../src/model/structures/structure.js";
import { assumed, assumedWith } from "./assumptions.js";
import { drawnDownLake } from "./lakes.js";
import { everyMonth, relativeGap } from "./near.js";
import {
  gravityIntake,
  noProgram,
  otherChance,
  plant,
  program,
  pumpedIntake,
  ramp,
  wholeStudy,
} from "./study.js";

const lowered = (id: string, elevation: number): Schedule => ({
  id,
  name: `lowered to ${elevation} m`,
  drawdown: [{ dayOfYear: 0, elevation }],
});

/** A study whose lake stands at 100 m, with one other schedule and an option that follows it. */
function studyWith(schedule: Schedule, changes: Partial<StudyInput> = {}): StudyInput {
  const lake = {
    ...drawnDownLake,
    drawdown: [{ dayOfYear: 0, elevation: 100 }],
    otherSchedules: [schedule],
    storageValue: 0.01,
  };
  const following = { ...noProgram, id: "follow", name: "Follow it", schedule: schedule.id };
  return { ...wholeStudy, lake, options: [noProgram, program, following], ...changes };
}

const followed = (input: StudyInput) => {
  const comparison = compare(input, assumed);
  const balance = comparison.options.find(({ result }) => result.option.id === "follow");
  const schedule = comparison.schedules[1];
  if (!balance || !schedule) throw new Error("no option follows a schedule");
  return { comparison, balance, schedule };
};

describe("a schedule that is the lake's own", () => {
  it("costs and saves nothing", () => {
    const { comparison, balance, schedule } = followed(studyWith(lowered("same", 100)));
    expect(schedule.operating).toEqual([]);
    expect(schedule.storageGivenUp).toBe(0);
    expect(schedule.infestation.byYear.map(String)).toEqual(comparison.infestation.byYear.map(String));
    expect(balance.avoidedLoss.isZero()).toBe(true);
    expect(balance.addedProgramCost.isZero()).toBe(true);
  });

  it("is the same as a record that holds its year, once or three times", () => {
    const year = dailyElevations(drawnDownLake.drawdown);
    const record = ["2001", "2002", "2003"].map((label) => ({ label, daily: year }));
    const byYear = (lake: StudyInput["lake"]) =>
      compare({ ...wholeStudy, lake }, assumed).infestation.byYear.map((amount) => amount.toNumber());
    const once = byYear({ ...drawnDownLake, record: record.slice(0, 1) });
    expect(once).toEqual(byYear(drawnDownLake));
    // Thirds do not add up to a whole to the cent in every line: two cents a line at most.
    byYear({ ...drawnDownLake, record }).forEach((amount, index) => {
      expect(Math.abs(amount - (once[index] ?? Number.NaN))).toBeLessThan(1);
    });
  });
});

describe("a lower level all year", () => {
  it("gives up the storage between, by the trapezoid rule, and its value", () => {
    // By hand: the table's area is 1 km2 at 60 m and 3 km2 at 100 m, linear: 2.8 km2 at 96 m; (2.8 + 3)/2 x 4 = 11.6 hm3.
    const { schedule } = followed(studyWith(lowered("low", 96), { structures: [ramp] }));
    expect(schedule.storageGivenUp).toBeCloseTo(11.6e6, 3);
    const [line] = schedule.operating;
    expect(line?.what).toBe("storage given up");
    expect(line?.cents).toBe(116_000_00);
    expect(line?.assumptionIds).toEqual([]);
  });

  it("makes less energy by the head lost, priced by month", () => {
    // By hand: 4 m of the gross head of 40 m less the penstock's loss; energy is in proportion to net head.
    const plain = { ...plant, energyPrice: everyMonth(0.05) };
    const { comparison, schedule } = followed(studyWith(lowered("low", 96), { structures: [plain] }));
    const own = comparison.schedules[0];
    const perMetre = own.cleanEnergy - schedule.cleanEnergy;
    const power = (2 * 0.87 * 1000 * 9.81 * 12 * 4) / 1000;
    expect(relativeGap(perMetre, power * 8760)).toBeLessThan(1e-9);
    const energy = schedule.operating.find(({ quantityKind }) => quantityKind === "energy");
    expect(energy?.cents).toBe(Math.round(power * 8760 * 0.05 * 100));
    expect(energy?.bearer).toBe("power-fund");
  });

  it("leaves an intake above the water without any, at the price of water from elsewhere", () => {
    const { schedule } = followed(studyWith(lowered("low", 86), { structures: [gravityIntake] }));
    const water = schedule.operating.find(({ quantityKind }) => quantityKind === "volume" && quantityKind);
    const yearly = gravityIntake.demand.reduce(
      (sum, flow, month) =>
        sum + flow * ([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month] ?? 0) * 86_400,
      0,
    );
    expect(relativeGap(water?.quantity ?? Number.NaN, yearly)).toBeLessThan(1e-9);
  });

  it("lengthens a pump's lift where the delivery is known", () => {
    // By hand: rho g V dh / eta; 4 m more for every cubic metre.
    const supply = {
      by: "pump" as const,
      efficiency: 0.75,
      energyPrice: 0.08,
      curve: [{ flow: 1.3, head: 60 }],
      deliveryElevation: 120,
      control: "variable-speed" as const,
    };
    const { schedule } = followed(
      studyWith(lowered("low", 96), { structures: [{ ...pumpedIntake, supply, demand: everyMonth(0.6) }] }),
    );
    const energy = schedule.operating.find(({ quantityKind }) => quantityKind === "energy");
    const expected = (1000 * 9.81 * 0.6 * 4 * 8760) / 0.75 / 1000;
    expect(relativeGap(energy?.quantity ?? Number.NaN, expected)).toBeLessThan(1e-9);
  });

  it("closes a ramp that ends above it", () => {
    const { schedule } = followed(studyWith(lowered("low", 89), { structures: [ramp] }));
    const days = schedule.operating.find(({ quantityKind }) => quantityKind === "days");
    expect(days?.quantity).toBe(365);
    expect(days?.cents).toBe(365 * 20 * 12 * 100);
  });

  it("saves where it is higher: the lines change sign", () => {
    const lake = { ...drawnDownLake, drawdown: [{ dayOfYear: 0, elevation: 96 }] };
    const input = studyWith(lowered("high", 100), { structures: [plant] });
    const { schedule } = followed({ ...input, lake: { ...input.lake, drawdown: lake.drawdown } });
    expect(schedule.storageGivenUp).toBe(0);
    expect(totalOf(schedule.operating).isNegative()).toBe(true);
  });
});

describe("a winter drawdown once infested", () => {
  const winter: Schedule = { id: "winter", name: "winter drawdown", drawdown: drawnDownLake.drawdown };
  const { comparison, balance, schedule } = followed(studyWith(winter));

  it("kills in the band that it bares, and leaves shells on the ramp", () => {
    expect(comparison.schedules[0].killed()).toBe(0);
    // A band killed each winter carries one season's growth: between a thin and the heaviest layer, 1 to 15 kg/m2.
    expect(schedule.killed()).toBeGreaterThan(1);
    expect(schedule.killed()).toBeLessThan(15);
    expect(schedule.litter).toBeGreaterThan(0);
  });

  it("costs what its lines say in every infested year, and nothing while the lake is clean", () => {
    const { result } = balance;
    const { baseline } = comparison;
    const expected = result.expectedByYear.map(({ program: cost }, year) => {
      const infested = result.infestedByYear[year] ?? Number.NaN;
      const own = baseline.expectedByYear[year]?.program.toNumber() ?? Number.NaN;
      return relativeGap(cost.toNumber(), own + infested * result.schedulePerYear.toNumber());
    });
    expect(Math.max(...expected)).toBeLessThan(1e-12);
    expect(result.hazard).toBe(baseline.hazard);
  });

  it("is paid by those whose service it takes, in all as much as it adds", () => {
    const paid = balance.bearers.reduce((sum, { paysNow }) => sum + paysNow.toNumber(), 0);
    expect(relativeGap(paid, balance.addedProgramCost.toNumber())).toBeLessThan(1e-9);
    expect(balance.bearers.find(({ id }) => id === "power-fund")?.paysNow.greaterThan(0)).toBe(true);
  });

  it("adds to the cost of an infestation here: the shells that it leaves on the ramp outweigh what it kills elsewhere", () => {
    const [own, lowered] = comparison.schedules.map(
      ({ infestation }) => infestation.ofStructure("ramp").byYear,
    );
    expect(own?.every((amount) => amount.isZero())).toBe(true);
    expect(lowered?.at(-1)?.greaterThan(0)).toBe(true);
    expect(balance.avoidedLoss.isNegative()).toBe(true);
  });
});

/** An intake in the band that takes no water while it hangs dry: what the drawdown kills in it saves cleaning. */
const summerIntake = {
  ...gravityIntake,
  elevation: 94,
  demand: gravityIntake.demand.map((flow, month) => (month < 3 ? 0 : flow)),
};

describe("a drawdown that pays", () => {
  const winter: Schedule = { id: "winter", name: "winter drawdown", drawdown: drawnDownLake.drawdown };
  const studyOfIntake = (options: StudyInput["options"]) => {
    const input = studyWith(winter, { structures: [summerIntake], options });
    return { ...input, lake: { ...input.lake, storageValue: 0.0001 } };
  };

  it("breaks even where its losses cost as many times more as its cost is above what it avoids", () => {
    const { balance } = followed(
      studyOfIntake([noProgram, { ...noProgram, id: "follow", schedule: "winter" }]),
    );
    expect(balance.avoidedLoss.greaterThan(0)).toBe(true);
    const scaled = balance.avoidedLoss.times(balance.breakEven.lossFactor ?? Number.NaN).toNumber();
    expect(relativeGap(scaled, balance.addedProgramCost.toNumber())).toBeLessThan(1e-9);
  });

  it("breaks even at a chance at which a comparison finds no net benefit", () => {
    const both = { ...program, id: "follow", schedule: "winter" };
    const input = studyOfIntake([noProgram, both]);
    const { comparison, balance } = followed(input);
    const chance = balance.breakEven.hazard ?? Number.NaN;
    expect(chance).toBeGreaterThan(0);
    const { arrivals } = comparison.baseline;
    const clean = (1 - chance) / (1 - otherChance);
    const perArrival = -Math.log(clean) / (arrivals.slipThrough * comparison.lake.suitability.weight);
    const at = compare(input, assumedWith({ "arrival.founding-unknown": perArrival }));
    expect(relativeGap(at.baseline.hazard, chance)).toBeLessThan(1e-9);
    const net = at.options[0]?.netBenefit.toNumber() ?? Number.NaN;
    expect(Math.abs(net) / (at.options[0]?.avoidedLoss.toNumber() ?? 0)).toBeLessThan(1e-6);
  });
});

describe("an option with a schedule and inspection", () => {
  it("has the chance of the program and the costs of the schedule", () => {
    const both = { ...program, id: "follow", schedule: "winter" };
    const winter: Schedule = { id: "winter", name: "winter", drawdown: drawnDownLake.drawdown };
    const { comparison, balance, schedule } = followed(
      studyWith(winter, { options: [noProgram, program, both] }),
    );
    const plain = comparison.options.find(({ result }) => result.option.id === "stations");
    expect(balance.result.hazard).toBe(plain?.result.hazard);
    expect(balance.result.schedule).toBe(schedule);
  });
});

describe("what floats or stands nowhere", () => {
  it("costs under each schedule what it costs when worked out for that schedule alone", () => {
    const { schedule } = followed(studyWith(lowered("low", 94)));
    const placed = schedule.structures.map((result) => ({ result, structure: result.structure }));
    const others = placed.filter(({ structure }) => kindOf(structure).reach(structure)?.floats !== false);
    expect(others.length).toBeGreaterThan(1);
    for (const { result, structure } of others) {
      const alone = structureResult(structure, schedule.contexts);
      expect(result.years).toEqual(alone.years);
      expect(result.components.map(({ chosen }) => chosen.plan.id)).toEqual(
        alone.components.map(({ chosen }) => chosen.plan.id),
      );
    }
  });
});
