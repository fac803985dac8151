import { describe, expect, it } from "vitest";
import { compare, isBaseline } from "../../src/model/compare.js";
import type { StudyInput } from "../../src/model/inputs.js";
import type { Lake } from "../../src/model/lake/lake.js";
import { dailyElevations } from "../../src/model/lake/levels.js";
import { assumed, assumedWith } from "./assumptions.js";
import { contextsOf } from "./contexts.js";
import { drawnDownLake, productiveLake } from "./lakes.js";
import { growLayers } from "./mussels/growing.js";
import { everyMonth, relativeGap } from "./near.js";
import { noProgram, plant, program, ramp, studyOf } from "./study.js";

const level = (elevation: number) => dailyElevations([{ dayOfYear: 0, elevation }]);
const winter = dailyElevations(drawnDownLake.drawdown);
const record = [
  { label: "2001", daily: winter },
  { label: "2002", daily: level(100) },
  { label: "2003", daily: level(98) },
];
const recorded: Lake = { ...productiveLake, record };

describe("the levels of a record", () => {
  const { schedules, lake } = compare(studyOf([ramp], { lake: recorded }), assumed);

  it("are each of its years, their mean day by day, and the band of all of them", () => {
    const { levels } = schedules[0];
    expect(levels.years.map(({ label }) => label)).toEqual([" in 2001", " in 2002", " in 2003"]);
    expect(levels.years.map(({ daily }) => daily[20])).toEqual([90, 100, 98]);
    // By hand: (90 + 100 + 98)/3 in January, (100 + 100 + 98)/3 in July.
    expect(levels.daily[20]).toBeCloseTo(96, 12);
    expect(levels.daily[200]).toBeCloseTo(298 / 3, 12);
    expect(levels.band).toEqual({ lowest: 90, highest: 100 });
    // By hand: 1 km2 at 60 m and 3 km2 at 100 m, linear: 2.5 km2 at 90 m.
    expect(levels.exposedArea).toBeCloseTo(0.5e6, 3);
    expect(levels.storageInBand).toBeCloseTo(27.5e6, 3);
  });

  it("leave on ramps what the last year of the horizon does", () => {
    const [own] = schedules;
    const litter = own.structures[0]?.litter ?? [];
    expect(own.litter).toBe(litter.at(-1)?.mass);
    expect(litter.at(-1)?.mass).toBeGreaterThan(litter[1]?.mass ?? Number.NaN);
  });

  it("have the density at the end of each year", () => {
    const [{ density }] = contextsOf(recorded, 20);
    expect(lake.densityByYear).toHaveLength(20);
    expect(lake.densityByYear[0]).toBe(density[11]);
    expect(lake.densityByYear[4]).toBe(density[59]);
    const infested: Lake = { ...recorded, infestedSince: 2024 };
    // Infested for three years when the study begins in 2027.
    const later = compare(studyOf([ramp], { lake: infested }), assumed).lake.densityByYear;
    expect(later).toHaveLength(20);
    expect(later[0]).toBe(density[47]);
    expect(density[47]).not.toBe(density[11]);
  });
});

describe("what a drawdown kills in the band that it bares", () => {
  it("is its mean over the height, whether in few strips or in many", () => {
    // The last of ten mature years of each, every month grown and its dead added up, in 400 strips at their middles. A
    // hundredth is what a reader may tell apart.
    const mild: Lake = {
      ...drawnDownLake,
      drawdown: [
        { dayOfYear: 0, elevation: 100 },
        { dayOfYear: 70, elevation: 100 },
        { dayOfYear: 110, elevation: 92 },
        { dayOfYear: 150, elevation: 100 },
      ],
    };
    const [context] = contextsOf(mild, 10);
    const density = Array<number>(120).fill(context.matureDensity);
    const strips = Array.from({ length: 400 }, (_, strip) => 92 + (8 * (strip + 1 / 2)) / 400).map(
      (elevation) => {
        const surface = context.growing({ place: { at: "elevation", elevation }, velocity: everyMonth(0) });
        const lastYear = growLayers({ surface, density }, context.growth).slice(-12);
        return lastYear.reduce((sum, { killed }) => sum + killed, 0);
      },
    );
    const expected = strips.reduce((sum, each) => sum + each, 0) / strips.length;
    const [own] = compare(studyOf([ramp], { lake: mild }), assumed).schedules;
    expect(Math.min(...strips)).not.toBe(Math.max(...strips));
    expect(relativeGap(own.killed(), expected)).toBeLessThan(0.01);
  });
});

describe("what other levels cost over a record", () => {
  const following = { ...noProgram, id: "follow", name: "Follow it", schedule: "low" };
  const studyWith = (structures: StudyInput["structures"], lake: Lake): StudyInput =>
    studyOf(structures, { lake, options: [noProgram, program, following] });

  it("is the mean over its years", () => {
    // By hand: a plant of two units makes 8,760 h times the power of each metre of net head at 12 m3/s and 0.87. Against
    // 100 m, years at 96 m and at 98 m lose 3 m on average; a year at 100 m each instead of 97 and 99 gains 2 m.
    const power = (2 * 0.87 * 1000 * 9.81 * 12) / 1000;
    const years = (...elevations: number[]) =>
      elevations.map((elevation, index) => ({ label: `${2001 + index}`, daily: level(elevation) }));
    const energyUnder = (own: readonly number[], other: readonly number[]) => {
      const schedule = { id: "low", name: "low", drawdown: productiveLake.drawdown, record: years(...other) };
      const lake: Lake = { ...productiveLake, record: years(...own), otherSchedules: [schedule] };
      const [, under] = compare(
        studyWith([{ ...plant, energyPrice: everyMonth(0.05) }], lake),
        assumed,
      ).schedules;
      return under?.operating.find(({ quantityKind }) => quantityKind === "energy");
    };
    const lost = energyUnder([100, 100], [96, 98]);
    expect(relativeGap(lost?.quantity ?? Number.NaN, 3 * power * 8760)).toBeLessThan(1e-9);
    expect(lost?.type).toBe("program");
    const gained = energyUnder([97, 99], [100, 100]);
    expect(relativeGap(gained?.quantity ?? Number.NaN, -2 * power * 8760)).toBeLessThan(1e-9);
    expect(gained?.type).toBe("revenue");
    expect(gained?.assumptionIds).toEqual([]);
  });

  it("is borne by whom it takes service from, though they lose nothing to mussels", () => {
    // No layer is thick enough to be swept; a ramp ending at 90 m lies above a lake at 89 m.
    const never = assumedWith({ "ramp.litter-tolerance": 9 });
    const schedule = { id: "low", name: "low", drawdown: [{ dayOfYear: 0, elevation: 89 }] };
    const lake: Lake = { ...productiveLake, otherSchedules: [schedule] };
    const { options } = compare(studyWith([{ ...ramp, bearer: "marina" }], lake), never);
    const followed = options.find(({ result }) => result.option.id === "follow");
    expect(followed?.bearers.find(({ id }) => id === "marina")?.paysNow.greaterThan(0)).toBe(true);
    const other = options.find(({ result }) => result.option.id === "stations");
    expect(other?.bearers.map(({ id }) => id)).not.toContain("marina");
  });

  it("is refused for an option that follows a schedule nobody entered", () => {
    const options = [noProgram, { ...program, schedule: "unknown" }];
    expect(() => compare(studyOf([ramp], { options }), assumed)).toThrow(
      "options: no schedule has the id unknown",
    );
  });

  it("makes an option of its own: what follows other levels is no baseline", () => {
    expect(isBaseline(noProgram)).toBe(true);
    expect(isBaseline(following)).toBe(false);
    expect(isBaseline(program)).toBe(false);
  });
});
