import { describe, expect, it, test } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import type { GrowingSurface } from "../../../src/model/mussels/growing-surfaces.js";
import { growingSurfaces } from "../../../src/model/mussels/growing-surfaces.js";
import type { SurfaceMonth } from "../../../src/model/mussels/surface.js";
import { drawnDownLake } from "../lakes.js";
import { growLayers, growth, plain, stillSurface } from "./growing.js";

const maker = () => growingSurfaces(growth);
const layersOn = (surface: GrowingSurface) =>
  growLayers({ surface, density: Array<number>(40).fill(0.8) }, growth);
const plainOn = (surface: GrowingSurface) => plain(layersOn(surface));

/** A pier bare from 11 January on: some of it outlives the mild days. */
const mildWinter: Lake = {
  ...drawnDownLake,
  drawdown: [
    { dayOfYear: 9, elevation: 100 },
    { dayOfYear: 10, elevation: 90 },
    { dayOfYear: 21, elevation: 90 },
    { dayOfYear: 22, elevation: 100 },
  ],
  airTemperature: drawnDownLake.airTemperature.map((each) => Math.max(5, each)),
};
const { months } = stillSurface({ at: "elevation", elevation: 95 }, mildWinter);
const [january, may, june, july] = [0, 4, 5, 6];

const withMonth = (month: number, changes: Partial<SurfaceMonth>): SurfaceMonth[] =>
  months.map((each, index) => (index === month ? { ...each, ...changes } : each));
const monthOf = (month: number): SurfaceMonth => {
  const found = months[month];
  if (!found) throw new Error(`no month ${month}`);
  return found;
};
const { doseBefore, doseAfter } = monthOf(january);

describe("surfaces of one maker grow what each grows by itself", () => {
  // The same maker is shown the first surface, then one that differs from it in one thing alone.
  test.each<[string, SurfaceMonth[]]>([
    ["the same year", [...months]],
    ["half of the settlers of July", withMonth(july, { settlement: monthOf(july).settlement / 2 })],
    ["no settlers in July", withMonth(july, { settlement: 0 })],
    [
      "the warmth of May and June changed over, as warm in sum",
      months.map((each, month) => {
        if (month !== may && month !== june) return each;
        return { ...each, degreeDays: monthOf(month === may ? june : may).degreeDays };
      }),
    ],
    ["a warmer July", withMonth(july, { degreeDays: monthOf(july).degreeDays + 100 })],
    ["a drier January", withMonth(january, { doseAfter: { ...doseAfter, drying: doseAfter.drying * 2 } })],
    ["frost in January", withMonth(january, { doseAfter: { ...doseAfter, frost: 1.5 } })],
    [
      "a January dry since December",
      withMonth(january, {
        doseBefore: { ...doseBefore, drying: doseAfter.drying / 2 },
      }),
    ],
    [
      "a January of frost since December",
      withMonth(january, {
        doseBefore: { ...doseBefore, frost: 0.3 },
        doseAfter: { ...doseAfter, frost: 1.5 },
      }),
    ],
    ["no winter", withMonth(january, { doseBefore, doseAfter: doseBefore })],
  ])("%s", (_name, other) => {
    for (const [first, second] of [
      [months, other],
      [other, months],
    ] as const) {
      const { surfaceOf } = maker();
      layersOn(surfaceOf(first));
      expect(plainOn(surfaceOf(second))).toEqual(plainOn(maker().surfaceOf(second)));
      expect(surfaceOf(second).months).toEqual(second);
    }
  });

  it("and alike ones are one surface until they are let go of, which changes nothing that grows", () => {
    const { surfaceOf, forget } = maker();
    const before = surfaceOf(months);
    const halved = withMonth(july, { settlement: monthOf(july).settlement / 2 });
    expect(surfaceOf([...months])).toBe(before);
    expect(surfaceOf(halved)).not.toBe(before);
    expect(surfaceOf(halved).table).toBe(before.table);
    expect(surfaceOf([...months])).toBe(before);
    forget();
    const after = surfaceOf(months);
    expect(after).not.toBe(before);
    expect(plainOn(after)).toEqual(plainOn(before));
  });
});

describe("of very many surfaces", () => {
  it("the latest 128 are kept: all are let go of where one more is asked for", () => {
    const { surfaceOf } = maker();
    const { settlement } = monthOf(july);
    const numbered = (each: number) => withMonth(july, { settlement: settlement / (each + 1) });
    const [first, ...others] = Array.from({ length: 128 }, (_, each) => surfaceOf(numbered(each)));
    expect(surfaceOf(numbered(0))).toBe(first);
    expect(surfaceOf(numbered(127))).toBe(others.at(-1));
    const next = surfaceOf(numbered(128));
    expect(surfaceOf(numbered(0))).not.toBe(first);
    expect(surfaceOf(numbered(128))).toBe(next);
    // And again, once that many more are kept.
    for (let each = 1; each < 127; each++) surfaceOf(numbered(each));
    expect(surfaceOf(numbered(128))).toBe(next);
    surfaceOf(numbered(200));
    expect(surfaceOf(numbered(128))).not.toBe(next);
  });
});

describe("the winter of these surfaces", () => {
  it("kills some mussels and leaves some, so that each difference above shows", () => {
    const layers = layersOn(maker().surfaceOf(months));
    expect(layers[12]?.killed).toBeGreaterThan(0);
    expect(layers[12]?.number).toBeGreaterThan(0);
  });
});
