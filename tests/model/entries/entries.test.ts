import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { type EntryCheck, within } from "../../../src/model/entries/entry-check.js";
import { mostLaneLaunches } from "../../../src/model/entries/launch-entries.js";
import { cleanDelivered, cleanLoss, impossible } from "../../../src/model/entries/pipe-entries.js";
import type { StudyInput } from "../../../src/model/inputs.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import type { PipePart } from "../../../src/model/structures/pipe-part.js";
import { assumed } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { pumpingPlant } from "../structures/deliveries/served.js";
import {
  curvePump,
  duties,
  fixedDock,
  gravityIntake,
  plant,
  pumpedIntake,
  ramp,
  sealWater,
  studyOf,
  wholeStudy,
} from "../study.js";

const checksOf = (structures: readonly Structure[], changes: Partial<StudyInput> = {}) =>
  compare(studyOf(structures, changes), assumed).entryChecks;

/** The check whose words hold these. */
function told(checks: readonly EntryCheck[], words: string): EntryCheck | undefined {
  const found = checks.filter(({ what }) => what.includes(words));
  if (found.length > 1) throw new Error(`"${words}" names ${found.length} checks`);
  return found[0];
}

const foundIn = (structure: Structure, words: string, changes: Partial<StudyInput> = {}) =>
  told(checksOf([structure], changes), words)?.found;

/** Loss by Swamee and Jain's friction factor (1976; from memory), in water of 10 °C: 1.3 mm²/s. */
function lossByHand(pipe: typeof pumpedIntake.conduit, flow: number): number {
  const { diameter, length, roughness = 0, minorLoss } = pipe;
  const velocity = flow / ((Math.PI / 4) * diameter ** 2);
  const reynolds = (velocity * diameter) / 1.3e-6;
  const friction = 0.25 / Math.log10(roughness / diameter / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
  return ((friction * length) / diameter + minorLoss) * (velocity ** 2 / (2 * 9.80665));
}

/** Swamee and Jain's factor is said to be within 1 % of Colebrook's; warmer or colder water makes another 2 %. */
const nearly = (value: number) => ({ low: value * 0.97, high: value * 1.03 });

describe("what entries come to, by hand", () => {
  // The lake stands at 90 m in January and February, else at 100 m; its table begins at 60 m.
  it.each<[string, Structure, string, number]>([
    ["1.2 m³/s in 1.1 m", pumpedIntake, "conduit: velocity when clean", 1.2 / (Math.PI * 0.55 ** 2)],
    ["its own wall", pumpedIntake, "conduit: roughness", 0.0005],
    ["1.2 m³/s through 6/7 of 9 m²", pumpedIntake, "velocity between its clean bars", (1.2 / 9) * (7 / 6)],
    ["its limit", pumpedIntake, "velocity permitted through it", 0.6],
    ["its opening", pumpedIntake, "clear opening", 0.06],
    ["its other limit", pumpedIntake, "head loss at which", 0.15],
    ["90 m less 88 m", pumpedIntake, "water over it", 2],
    ["88 m less 60 m", pumpedIntake, "height over the lowest row", 28],
    ["a margin that is kept", pumpedIntake, "head to spare", 2],
    ["its price of energy", pumpedIntake, "price of energy", 0.08],
    ["its price of water", pumpedIntake, "price of water", 0.25],
    ["all of it", gravityIntake, "share of the demand", 1],
    ["12 m³/s in 2.9 m", plant, "penstock: velocity when clean", 12 / (Math.PI * 1.45 ** 2)],
    ["one price all year", plant, "highest price of energy", 0.05],
    ["610,000 m³ on 120 ha", pumpingPlant, "water of a year over the land", 61 / 120],
    ["its price", pumpingPlant, "price of energy", 0.08],
    ["its value", pumpingPlant, "value of water not delivered", 0.05],
    ["full to 100 m from May on", pumpingPlant, "water over it", 12],
    ["20 boats on 15/4 lanes", ramp, "each lane in the busiest month", 20 / 3.75],
    ["20 a day of 1,500 a month", ramp, "ramps over the launches", (20 * 365) / 18_000],
    ["3 % a year", duties, "Discount rate", 0.03],
    ["100 m less 97 m", { ...fixedDock, elevation: 97 }, "wetted surface at the highest level", 3],
  ])("%s", (_how, structure, words, expected) => {
    expect(foundIn(structure, words)).toBeCloseTo(expected, 12);
  });

  it("head that a clean pipe loses, and that there is over it", () => {
    const lost = nearly(lossByHand(pumpedIntake.conduit, 1.2));
    const loss = foundIn(pumpedIntake, "head that it loses");
    expect(loss).toBeGreaterThan(lost.low);
    expect(loss).toBeLessThan(lost.high);
    expect(foundIn(gravityIntake, "head available")).toBeCloseTo(4 / (loss ?? 0), 12);
  });

  it("a penstock's share of the head, in the month of the lowest lake", () => {
    const share = nearly(lossByHand(plant.penstock, 12) / (90 - 60));
    const found = foundIn(plant, "share of the head");
    expect(found).toBeGreaterThan(share.low);
    expect(found).toBeLessThan(share.high);
  });

  it("a penstock takes all of the head where there is none, or less than it takes", () => {
    expect(foundIn({ ...plant, tailwaterElevation: 90 }, "share of the head")).toBe(1);
  });

  it("a turbine's head at its highest, by its type", () => {
    const turbine = { type: "kaplan", ratedFlow: 14, generatorEfficiency: 0.97 } as const;
    const check = told(checksOf([{ ...plant, turbine }]), "kaplan turbine");
    expect(check).toMatchObject({ found: 40, low: 1.5, high: 70 });
    expect(told(checksOf([plant]), "turbine")).toBeUndefined();
  });

  it("the highest and the lowest price of energy where they differ", () => {
    const energyPrice = [0.02, ...everyMonth(0.05).slice(1)];
    const checks = checksOf([{ ...plant, energyPrice }]);
    expect(told(checks, "highest price of energy")?.found).toBe(0.05);
    expect(told(checks, "lowest price of energy")?.found).toBe(0.02);
    expect(told(checksOf([plant]), "lowest price of energy")).toBeUndefined();
  });

  it("head to spare by a curve, in the hardest month with demand", () => {
    // By hand: a curve of one point is H(4/3 − (Q/Qr)²/3); in summer it lifts 125 m − 100 m, and 35 m on the lowest day.
    const intake = { ...pumpedIntake, supply: curvePump };
    const curve = (flow: number) => 34 * (4 / 3 - (flow / 1.3) ** 2 / 3);
    const loss = foundIn(pumpedIntake, "head that it loses") ?? 0;
    const summer = { ...intake, demand: pumpedIntake.demand.map((each, month) => (month < 2 ? 0 : each)) };
    expect(foundIn(summer, "head to spare")).toBeCloseTo(curve(1.2) - 25 - loss, 9);
    expect(told(checksOf([summer]), "head to spare")?.at).toEqual(["structures", 0, "supply", "curve"]);
    const winter = { ...intake, demand: pumpedIntake.demand.map((each, month) => (month < 1 ? each : 0)) };
    const lost = lossByHand(pumpedIntake.conduit, 0.5);
    expect(foundIn(winter, "head to spare")).toBeCloseTo(curve(0.5) - 35 - lost, 1);
  });

  it("head to spare by a margin at its own place", () => {
    expect(told(checksOf([pumpedIntake]), "head to spare")?.at).toEqual([
      "structures",
      0,
      "supply",
      "marginHead",
    ]);
  });

  it("the share of the demand in the hardest month", () => {
    const short = { ...gravityIntake, supply: { by: "gravity", availableHead: 1 } } as const;
    const loss = foundIn(pumpedIntake, "head that it loses") ?? 0;
    // By hand: flow goes as the root of the head, but for the little by which friction grows in slower water.
    const share = foundIn(short, "share of the demand") ?? 0;
    expect(Math.abs(share / Math.sqrt(1 / loss) - 1)).toBeLessThan(0.02);
    expect(told(checksOf([short]), "share of the demand")?.passed).toBe(false);
  });

  it("launches of all ramps together, each month by its days", () => {
    const busy = { ...ramp, id: "other", launchesPerDay: [0, 28, ...everyMonth(0).slice(2)] };
    const found = foundIn(ramp, "ramps over the launches") ?? 0;
    const both = told(checksOf([ramp, busy]), "ramps over the launches")?.found;
    expect(both).toBeCloseTo(found + (28 * 28) / 18_000, 12);
  });

  it("launches of a narrow ramp on one lane", () => {
    expect(foundIn({ ...ramp, width: 3 }, "each lane")).toBe(20);
  });
});

describe("what refuses an entry", () => {
  it("is past the limits of velocity, head, share delivered and launches", () => {
    expect(impossible(assumed)).toEqual({ velocity: 20, pumpedHead: 1000, delivered: 0.5 });
    expect(mostLaneLaunches(assumed)).toBe(1440);
  });

  it("is reckoned for the flow that a head drives through a clean pipe, at most the largest", () => {
    const part = { pipe: pumpedIntake.conduit, flow: 1.2 } as PipePart;
    expect(cleanDelivered(part, cleanLoss(part, 1.3e-6), 1.3e-6)).toBeCloseTo(1, 9);
    expect(cleanDelivered(part, 50, 1.3e-6)).toBe(1);
    const quarter = cleanDelivered(part, cleanLoss(part, 1.3e-6) / 4, 1.3e-6);
    // By hand: half the flow, but for the little by which friction grows in slower water.
    expect(Math.abs(quarter / 0.5 - 1)).toBeLessThan(0.02);
  });
});

describe("the places of entries", () => {
  it("are those of the fields that an author may correct", () => {
    const told = checksOf([pumpedIntake]).map(({ at }) => at.slice(2).join("."));
    expect(told).toEqual([
      ...["conduit.diameter", "conduit.roughness"],
      ...["rack", "rack.velocityLimit", "rack.clearSpacing", "rack.headLossLimit"],
      ...["elevation", "elevation", "supply", "conduit", "supply.marginHead", "supply.energyPrice"],
      ...["alternativeWater", ""],
    ]);
  });
});

describe("what is not checked", () => {
  const silent: [string, Structure, string, Partial<StudyInput>][] = [
    ["a rate of nothing", duties, "Discount rate", { money: { ...wholeStudy.money, discountRate: 0 } }],
    ["a wall told by Hazen–Williams", withoutRoughness(), "roughness", {}],
    ["water that costs nothing", { ...pumpedIntake, alternativeWater: 0 }, "price of water", {}],
    ["deliveries worth nothing", { ...pumpingPlant, lostDeliveries: 0 }, "value of water", {}],
    ["an intake without demand", { ...pumpedIntake, demand: everyMonth(0) }, "price of", {}],
    ["depth of an intake without demand", { ...pumpedIntake, demand: everyMonth(0) }, "water over it", {}],
    ["a rack without flow", { ...pumpedIntake, demand: everyMonth(0) }, "between its clean bars", {}],
    ["a plant without flow", { ...plant, flow: everyMonth(0) }, "share of the head", {}],
    ["a lake without ramps", duties, "ramps over the launches", {}],
    ["no launches", ramp, "ramps over", { boats: { ...wholeStudy.boats, launches: everyMonth(0) } }],
    ["a pumped conduit's head", pumpedIntake, "head available", {}],
    ["pumps where there are none", gravityIntake, "head to spare", {}],
  ];
  it.each(silent)("%s", (_what, structure, words, changes) => {
    expect(foundIn(structure, words, changes)).toBeUndefined();
  });

  function withoutRoughness(): Structure {
    const { roughness: _, ...conduit } = pumpedIntake.conduit;
    return { ...pumpedIntake, conduit: { ...conduit, hazenWilliamsC: 130 } };
  }
});

describe("an entry held against what is usual", () => {
  const entry = { at: ["place"], what: "what", measure: "count", found: 10, remedy: "Look again." } as const;
  it.each([
    [{ low: 10, high: 10 }, true],
    [{ low: 10 * (1 + 1e-10) }, true],
    [{ low: 10 * (1 + 1e-8) }, false],
    [{ high: 10 * (1 - 1e-10) }, true],
    [{ high: 10 * (1 - 1e-8) }, false],
    [{ low: -1, high: 11 }, true],
    [{}, true],
  ])("is within %j: %s", (range, passed) => {
    expect(within(entry, range)).toMatchObject({ ...entry, passed });
  });

  it("keeps its rounding where the range is below nothing", () => {
    expect(within({ ...entry, found: -10 }, { low: -10 * (1 - 1e-10) }).passed).toBe(true);
    expect(within({ ...entry, found: -10 }, { high: -10 * (1 + 1e-10) }).passed).toBe(true);
  });

  it.each<[string, Structure, string, readonly (number | undefined)[]]>([
    ["a conduit", pumpedIntake, "velocity when clean", [0.1, 3]],
    ["a penstock", plant, "penstock: velocity", [0.5, 8]],
    ["a line", sealWater, "velocity when clean", [0.2, 4]],
    ["a limit, at most", pumpedIntake, "velocity permitted", [undefined, 1.5]],
    ["a head that an intake may fall short of", gravityIntake, "head available", [undefined, 30]],
    ["a head that a line needs", sealWater, "head available", [1, 30]],
    ["water over an inlet, at least", sealWater, "water over it", [0, undefined]],
  ])("has the range of its kind: %s", (_what, structure, words, [low, high]) => {
    expect(told(checksOf([structure]), words)).toMatchObject({ low, high });
  });

  it("looks at the lowest day of each month in which water is taken", () => {
    const lake = { ...productiveLake, drawdown: wholeStudy.lake.drawdown };
    const summer = { ...pumpedIntake, demand: [0, 0, ...everyMonth(1).slice(2)] };
    expect(foundIn(summer, "water over it", { lake })).toBe(12);
  });
});
