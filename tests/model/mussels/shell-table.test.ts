import { describe, expect, it } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations, levelsOfYear } from "../../../src/model/lake/levels.js";
import { deadlyByMonth, dryingParameters, survival } from "../../../src/model/mussels/drying.js";
import { numberRoom } from "../../../src/model/mussels/number-room.js";
import { shellParameters, wetMassG } from "../../../src/model/mussels/shell.js";
import { agesMet, shellTable } from "../../../src/model/mussels/shell-table.js";
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
    { settlement: settlementParameters(lake, assumed), deadly: deadlyByMonth(lake, drying) },
  );
  return { months, table: shellTable(months, { shell, drying, room: numberRoom() }) };
}

type Tabled = ReturnType<typeof tableAt>;

/** What the table has of mussels that settled in July, at an age of one month or more. */
function entryOf(
  { months, table }: Tabled,
  name: "cover" | "mass" | "outlives" | "massMet",
  age: number,
): number {
  const month = (july + age) % 12;
  return table[name][month * table.cohorts + agesMet(months, month).indexOf(age)] ?? Number.NaN;
}
const lengthOf = (tabled: Tabled, age: number) => Math.sqrt(entryOf(tabled, "cover", age)) * 1000;

describe("a mussel's life on one surface", () => {
  const wet = tableAt(80, productiveLake);

  it("starts at the size of settlement and never shrinks", () => {
    expect(Math.sqrt(wet.table.settler.cover) * 1000).toBeCloseTo(shell.settlementMm, 10);
    expect(lengthOf(wet, 1)).toBeGreaterThan(shell.settlementMm);
    for (let age = 2; age <= 96; age++) {
      expect(lengthOf(wet, age)).toBeGreaterThanOrEqual(lengthOf(wet, age - 1));
    }
  });

  it("grows for seven years and no longer", () => {
    // Common practice, no source: few live longer. July is warm: the 84th month would add to it.
    expect(lengthOf(wet, 72)).toBeGreaterThan(lengthOf(wet, 71));
    expect(lengthOf(wet, 84)).toBe(lengthOf(wet, 83));
  });

  it("has the mass of its length", () => {
    expect(relativeGap(wet.table.settler.mass, wetMassG(shell.settlementMm, shell) / 1000)).toBeLessThan(
      1e-10,
    );
    for (const age of [3, 12, 40]) {
      const expected = wetMassG(lengthOf(wet, age), shell) / 1000;
      expect(relativeGap(entryOf(wet, "mass", age), expected)).toBeLessThan(1e-10);
    }
  });

  it("follows von Bertalanffy over the degree-days that it lived through", () => {
    // L = Lmax - (Lmax - L0) exp(-k DD), computed over the twelve months after July.
    const warmth = wet.months.reduce((sum, { degreeDays }) => sum + degreeDays, 0);
    const room = (shell.maximumMm - shell.settlementMm) * Math.exp(-shell.ratePerDegreeDay * warmth);
    expect(lengthOf(wet, 12)).toBeCloseTo(shell.maximumMm - room, 10);
  });

  it("is the same a year later once growth has come to rest", () => {
    expect(lengthOf(wet, 96)).toBe(lengthOf(wet, 84));
    expect(entryOf(wet, "mass", 96)).toBe(entryOf(wet, "mass", 84));
    expect(wet.table.isEverDry).toBe(false);
  });
});

describe("the ages that a month meets", () => {
  it("are those of eight seasons, youngest first", () => {
    const { months } = tableAt(80, productiveLake);
    const season = months.filter(({ settlement }) => settlement > 0).length;
    for (const month of [0, july]) {
      const ages = agesMet(months, month);
      expect(ages).toHaveLength(8 * season);
      expect(ages).toEqual([...ages].sort((one, other) => one - other));
      for (const age of ages) expect(months[(month + 96 - age) % 12]?.settlement).toBeGreaterThan(0);
    }
    // By hand: those that settled in a July are six months old in January, a year old in the next July.
    expect(agesMet(months, 0)).toContain(6);
    expect(agesMet(months, july)).toContain(12);
    expect(agesMet(months, july)).not.toContain(0);
  });
});

describe("an exposed period in the growing season", () => {
  it("meets mussels as they are when it begins, also in the month after", () => {
    // Exposed from 20 June to 20 July: those of the July before have grown in June until then, and in July only afterwards.
    const drawdown = [
      { dayOfYear: 169, elevation: 100 },
      { dayOfYear: 170, elevation: 90 },
      { dayOfYear: 200, elevation: 90 },
      { dayOfYear: 201, elevation: 100 },
    ];
    const tabled = tableAt(95, { ...productiveLake, drawdown });
    const [inMay, inJune, inJuly] = [10, 11, 12].map((age) => entryOf(tabled, "mass", age));
    const [metInJune, metInJuly] = [11, 12].map((age) => entryOf(tabled, "massMet", age));
    expect([metInJune, metInJuly]).toEqual([inJune, inJune]);
    expect(inJune).toBeGreaterThan(inMay ?? Number.NaN);
    expect(inJuly).toBeGreaterThan(inJune ?? Number.NaN);
    const [june, july] = [5, 6].map((month) => tabled.months[month]?.doseAfter);
    if (!june || !july) throw new Error("no summer");
    const both = entryOf(tabled, "outlives", 11) * entryOf(tabled, "outlives", 12);
    expect(relativeGap(both, survival(july, lengthOf(tabled, 11), drying))).toBeLessThan(1e-9);
  });
});

describe("a dry run that passes from one month to the next", () => {
  const tabled = tableAt(95, mildWinter);
  const { months, table } = tabled;

  it("leaves alive what its whole dose leaves, though it is met month by month", () => {
    // Settled in July: six months old in January, seven in February, at the length that December left.
    const dose = months[1]?.doseAfter;
    if (!dose) throw new Error("no February");
    const expected = survival(dose, lengthOf(tabled, 5), drying);
    expect(expected).toBeGreaterThan(0.001);
    expect(expected).toBeLessThan(0.9);
    const inTwo = entryOf(tabled, "outlives", 6) * entryOf(tabled, "outlives", 7);
    expect(relativeGap(inTwo, expected)).toBeLessThan(1e-6);
  });

  it("spares everything in the months under water", () => {
    for (const age of [1, 2, 3, 4, 5, 8, 9, 10, 11, 12, 13]) expect(entryOf(tabled, "outlives", age)).toBe(1);
    expect(table.isEverDry).toBe(true);
  });

  it("kills fewer of the older and longer", () => {
    // Ricciardi and others 1995, abstract: survival rises with size.
    expect(entryOf(tabled, "outlives", 18)).toBeGreaterThan(entryOf(tabled, "outlives", 6));
    expect(entryOf(tabled, "outlives", 30)).toBeGreaterThan(entryOf(tabled, "outlives", 18));
  });
});
