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
  it("lies where the water leaves it", () => {
    // By hand: of a ramp from 90 to 100 m a fall of the lake to 94 m bares 6 m of height, one to 92.9 m 7.1 m, one to
    // 85 m all of it.
    for (const [lowest, bared] of [
      [94, 6],
      [92.9, 7.1],
      [85, 10],
    ] as const) {
      const [litter] = litterByYear(ramp, [contextOf(loweredTo(lowest), years)]).slice(-1);
      expect(litter?.area).toBeCloseTo(bared * areaPerMetre, 6);
    }
  });

  it("is the shells of what is killed on it in each year, by hand", () => {
    const context = contextOf(loweredTo(94), years);
    const { killed } = context.killedBetween({ from: 90, to: 100 });
    const kept = assumed("shell.shell-share") * assumed("ramp.gathering");
    const byHand = killed.map((mass) => expect.closeTo(mass * areaPerMetre * kept, 6));
    expect(litterByYear(ramp, [context]).map(({ mass }) => mass)).toEqual(byHand);
    expect(new Set(killed.slice(0, 5)).size).toBe(5);
  });

  it("on two halves of a ramp is that on the whole", () => {
    const context = contextOf(loweredTo(93), years);
    const massOf = (changes: Partial<Ramp>) => litterByYear({ ...ramp, ...changes }, [context]).at(-1)?.mass;
    const halves = [massOf({ topElevation: 96.4 }), massOf({ bottomElevation: 96.4 })];
    expect(halves.reduce<number>((sum, half) => sum + (half ?? Number.NaN), 0)).toBeCloseTo(
      massOf({}) ?? Number.NaN,
      6,
    );
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

  it("leaves what is too little to sweep for the next year", () => {
    // By hand: 4 mm a year at a tolerance of 10 mm lie 4, 8, 12 mm deep; the third year sweeps 10 and leaves 2, the fifth
    // year has 10 again. 100 kg a year are 25 kg for each millimetre.
    const yearly = { mass: 100, area: 500, thickness: 0.004 };
    const lines = rampYears(
      ramp,
      Array(6).fill(yearly),
      contextOf(drawnDownLake, 6, assumedWith({ "ramp.litter-tolerance": 0.01 })),
    );
    expect(lines.map((each) => each.find(({ what }) => what === "sweeping")?.quantity ?? 0)).toEqual([
      0, 0, 500, 0, 500, 0,
    ]);
    const disposed = lines[2]?.find(({ what }) => what.startsWith("disposal"));
    expect(disposed?.quantity).toBeCloseTo(250, 9);
    expect(lines[4]).toBe(lines[2]);
  });

  it("is that of each year's own litter", () => {
    const twoYears = [
      { mass: 100, area: 500, thickness: 0.011 },
      { mass: 300, area: 900, thickness: 0.011 },
    ];
    const source = assumedWith({ "ramp.litter-tolerance": 0.01 });
    const lines = rampYears(ramp, twoYears, contextOf(drawnDownLake, 2, source));
    const swept = lines.map((each) => each.find(({ what }) => what === "sweeping")?.quantity);
    expect(swept).toEqual([500, 900]);
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
