import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations, levelsOfYear } from "../../../src/model/lake/levels.js";
import { dryingParameters, survival } from "../../../src/model/mussels/drying.js";
import { shellParameters, wetMassG } from "../../../src/model/mussels/shell.js";
import { nextPlaces, settlersPlace, shellTable } from "../../../src/model/mussels/shell-table.js";
import { settlementParameters, surfaceMonths } from "../../../src/model/mussels/surface.js";
import { assumed } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";

const drying = dryingParameters("quagga", assumed);
const shell = shellParameters(assumed);
const july = 6;

/** The lake drawn down for twelve days over the turn of January under cool, damp air: part of the mussels lives on. */
const mildWinter: Lake = {
  ...productiveLake,
  drawdown: [
    { dayOfYear: 24, elevation: 100 },
    { dayOfYear: 25, elevation: 90 },
    { dayOfYear: 36, elevation: 90 },
    { dayOfYear: 37, elevation: 100 },
  ],
  airTemperature: everyMonth(5),
  humidity: everyMonth(0.9),
};

function tableAt(elevation: number, lake: Lake) {
  const months = surfaceMonths(
    { place: { at: "elevation", elevation }, velocity: everyMonth(0) },
    lake,
    levelsOfYear(dailyElevations(lake.drawdown)),
    { settlement: settlementParameters(lake, assumed), drying },
  );
  return { months, table: shellTable(months, shell, drying) };
}

/** Place of mussels of an age, month by month from the settlers'. */
function tablePlace(monthOfYear: number, age: number): number {
  let place = settlersPlace(monthOfYear);
  for (let month = 0; month < age; month++) place = at(nextPlaces, place);
  return place;
}

const entryOf = (list: Float64Array, age: number) => list[tablePlace(july, age)] ?? Number.NaN;
const lengthOf = (cover: Float64Array, age: number) => Math.sqrt(entryOf(cover, age)) * 1000;

describe("a mussel's life on one surface", () => {
  const wet = tableAt(80, productiveLake);

  it("starts at the size of settlement and never shrinks", () => {
    expect(lengthOf(wet.table.cover, 0)).toBeCloseTo(shell.settlementMm, 10);
    for (let age = 1; age < 120; age++) {
      expect(lengthOf(wet.table.cover, age)).toBeGreaterThanOrEqual(lengthOf(wet.table.cover, age - 1));
    }
  });

  it("grows for seven years and no longer", () => {
    // Common practice, no source: few live longer. July is warm: the 84th month would add to it.
    expect(lengthOf(wet.table.cover, 72)).toBeGreaterThan(lengthOf(wet.table.cover, 71));
    expect(lengthOf(wet.table.cover, 84)).toBe(lengthOf(wet.table.cover, 83));
  });

  it("has the mass of its length", () => {
    for (const age of [0, 3, 12, 40]) {
      const expected = wetMassG(lengthOf(wet.table.cover, age), shell) / 1000;
      expect(relativeGap(entryOf(wet.table.mass, age), expected)).toBeLessThan(1e-10);
    }
  });

  it("follows von Bertalanffy over the degree-days that it lived through", () => {
    // L = Lmax - (Lmax - L0) exp(-k DD), computed over the twelve months after July.
    const warmth = wet.months.reduce((sum, { degreeDays }) => sum + degreeDays, 0);
    const room = (shell.maximumMm - shell.settlementMm) * Math.exp(-shell.ratePerDegreeDay * warmth);
    expect(lengthOf(wet.table.cover, 12)).toBeCloseTo(shell.maximumMm - room, 10);
  });

  it("is the same in the same season of any later year once growth has come to rest", () => {
    expect(tablePlace(july, 500)).toBe(tablePlace(july, 500 + 12));
    expect(tablePlace(july, 95)).toBe(tablePlace(july, 107));
    expect(wet.table.isEverDry).toBe(false);
  });
});

describe("a dry run that passes from one month to the next", () => {
  const { months, table } = tableAt(95, mildWinter);

  it("leaves alive what its whole dose leaves, though it is met month by month", () => {
    // Settled in July: six months old in January, seven in February, at the length that December left.
    const dose = months[1]?.doseAfter;
    if (!dose) throw new Error("no February");
    const expected = survival(dose, lengthOf(table.cover, 5), drying);
    expect(expected).toBeGreaterThan(0.001);
    expect(expected).toBeLessThan(0.9);
    const inTwo = entryOf(table.outlives, 6) * entryOf(table.outlives, 7);
    expect(relativeGap(inTwo, expected)).toBeLessThan(1e-6);
  });

  it("spares everything in the months under water", () => {
    for (const age of [1, 2, 3, 4, 5, 8, 9, 10, 11, 12, 13]) expect(entryOf(table.outlives, age)).toBe(1);
    expect(table.isEverDry).toBe(true);
  });

  it("kills fewer of the older and longer", () => {
    // Ricciardi and others 1995, abstract: survival rises with size.
    expect(entryOf(table.outlives, 18)).toBeGreaterThan(entryOf(table.outlives, 6));
    expect(entryOf(table.outlives, 30)).toBeGreaterThan(entryOf(table.outlives, 18));
  });
});
