import { describe, expect, it } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations } from "../../../src/model/lake/levels.js";
import type { Ramp } from "../../../src/model/structures/kinds/ramp.js";
import { litterByYear, rampYears } from "../../../src/model/structures/ramp.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf, contextsOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { ramp } from "../study.js";

const years = 12;
const loweredTo = (elevation: number): Lake => ({
  ...productiveLake,
  drawdown: drawnDownLake.drawdown.map((point) => (point.elevation < 100 ? { ...point, elevation } : point)),
});
/** Slope length of a metre of height at 14 %, over 15 m of width: from Pythagoras. */
const areaPerMetre = 15 * Math.sqrt(1 + 0.14 ** -2);

describe("the litter on a ramp", () => {
  it("lies on those fifths of its height that the water leaves", () => {
    // By hand: fifths of 2 m from 90 to 100 m have their middles at 91, 93, 95, 97 and 99 m; the lake falls to 94 m.
    const [litter] = litterByYear(ramp, [contextOf(loweredTo(94), years)]).slice(-1);
    expect(litter?.area).toBeCloseTo(3 * 2 * areaPerMetre, 6);
    const [more] = litterByYear(ramp, [contextOf(loweredTo(92.9), years)]).slice(-1);
    expect(more?.area).toBeCloseTo(4 * 2 * areaPerMetre, 6);
  });

  it("is the mean of what each year of a record leaves", () => {
    const record = [94, 98, 100].map((elevation) => ({
      label: `down to ${elevation}`,
      daily: dailyElevations(loweredTo(elevation).drawdown),
    }));
    const both = litterByYear(ramp, contextsOf({ ...productiveLake, record }, years));
    const alone = record.map((year) =>
      litterByYear(ramp, contextsOf({ ...productiveLake, record: [year] }, years)),
    );
    expect(both).toHaveLength(years);
    both.forEach((litter, year) => {
      for (const name of ["mass", "area", "thickness"] as const) {
        const mean = alone.reduce((sum, each) => sum + (each[year]?.[name] ?? Number.NaN), 0) / 3;
        expect(litter[name]).toBeCloseTo(mean, 9);
      }
    });
    expect(alone[0]?.at(-1)?.mass).toBeGreaterThan(alone[1]?.at(-1)?.mass ?? Number.NaN);
    expect(alone[1]?.at(-1)?.mass).toBeGreaterThan(0);
  });
});

describe("the sweeping of a ramp", () => {
  const litter = [{ mass: 4000, area: 500, thickness: 0.033 }];
  const linesWith = (changes: Partial<Ramp>, replaced: Readonly<Record<string, number>> = {}) =>
    rampYears({ ...ramp, ...changes }, litter, contextOf(drawnDownLake, 3, assumedWith(replaced)))[0] ?? [];
  const closureOf = (lines: ReturnType<typeof linesWith>) =>
    lines.find(({ what }) => what === "launch fees lost while closed");

  it("loses the fees of the days closed at each sweep, at the year's mean of launches", () => {
    // By hand: 33 mm are three times the tolerated 10 mm; 2.5 days for each, 7.5 in all. 30 launches a day in July
    // and August alone are 62 x 30 = 1,860 a year, 5.096 a day, at 12.
    const launchesPerDay = everyMonth(0).map((_, month) => (month === 6 || month === 7 ? 30 : 0));
    const replaced = { "ramp.litter-tolerance": 0.01, "ramp.closure-days": 2.5 };
    const lines = linesWith({ launchesPerDay }, replaced);
    expect(closureOf(lines)?.quantity).toBe(7.5);
    expect(closureOf(lines)?.unitRate).toBeCloseTo((1860 / 365) * 12, 9);
    expect(lines.find(({ what }) => what === "sweeping")?.quantity).toBe(1500);
  });

  it("has no line for what costs nothing", () => {
    const replaced = { "ramp.litter-tolerance": 0.01 };
    expect(linesWith({}, replaced)).toHaveLength(3);
    expect(closureOf(linesWith({ launchFee: 0 }, replaced))).toBeUndefined();
    expect(closureOf(linesWith({}, { ...replaced, "ramp.closure-days": 0 }))).toBeUndefined();
    const given = { ...replaced, "disposal.tipping-fee": 0, "disposal.haulage": 0 };
    expect(linesWith({}, given).map(({ quantityKind }) => quantityKind)).toEqual(["area", "days"]);
    expect(linesWith({}, { ...replaced, "ramp.sweeping-rate": 0 })).toHaveLength(2);
  });

  it("names each assumption that moves a line, given the litter", () => {
    // Moved by two per cent, but for the tolerance: three times as thick as it, the litter is swept once less.
    const replaced = { "ramp.litter-tolerance": 0.011 };
    const before = linesWith({}, replaced);
    const moved = { "ramp.closure-days": 1.02, "ramp.sweeping-rate": 3.06, "ramp.litter-tolerance": 0.012 };
    for (const [id, value] of Object.entries(moved)) {
      const after = linesWith({}, { ...replaced, [id]: value });
      const changed = before.filter(
        ({ quantity, unitRate }, index) =>
          after[index]?.quantity !== quantity || after[index]?.unitRate !== unitRate,
      );
      expect(changed.length, id).toBeGreaterThan(0);
      for (const { what, assumptionIds } of changed) expect([what, ...assumptionIds]).toContain(id);
    }
    // All rest on the shells of what was killed, and on the ground that they wash from.
    for (const { what, assumptionIds } of before) {
      expect([what, ...assumptionIds]).toEqual(
        expect.arrayContaining(["shell.shell-share", "ramp.gathering", "ramp.shell-density"]),
      );
    }
  });

  it("is not due below the tolerated thickness", () => {
    expect(linesWith({}, { "ramp.litter-tolerance": 0.034 })).toEqual([]);
  });
});

describe("the fixtures of a ramp", () => {
  it("cost their hours in each year with litter", () => {
    // By hand: 2 x 6 h at the maintenance rate.
    const fixtures = [{ name: "hand rails", count: 2, hoursEach: 6 }];
    const result = structureResult({ ...ramp, fixtures }, [contextOf(drawnDownLake, years)]);
    result.years.forEach((lines, year) => {
      const work = lines.filter(({ what }) => what === "work on hand rails");
      const isLittered = (result.litter[year]?.mass ?? Number.NaN) > 0;
      const amounts = isLittered ? [12 * assumed("labour.maintenance-rate") * 100] : [];
      expect(work.map(({ cents }) => cents)).toEqual(amounts);
    });
    expect(result.litter.at(-1)?.mass).toBeGreaterThan(0);
  });
});
