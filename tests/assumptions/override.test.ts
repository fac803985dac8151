import { describe, expect, it } from "vitest";
import { applyOverrides, assumedFrom } from "../../src/assumptions/override.js";
import { exchanged } from "../../src/assumptions/prices.js";
import { entryOf, setOf, setWithin } from "./real.js";

const set = setOf(
  entryOf({ id: "cleaning.rack.rate", unit: "$/m2" }),
  entryOf({ id: "cleaning.rack.visit", unit: "$", value: 7000, low: 2500, high: 20_000 }),
  entryOf({ id: "shell.maximum-length", unit: "mm", value: 30, low: 25, high: 40 }),
  entryOf({ id: "cleaning.dry-share", unit: "share", value: 0.4, low: 0.2, high: 0.7 }),
  entryOf({ id: "growth.yearly-mortality", unit: "1/yr", value: 0.5, low: 0.3, high: 1 }),
  entryOf({ id: "settlement.temperature", unit: "degC", value: 12, low: 10, high: 14 }),
  entryOf({ id: "cleaning.days", unit: "d", value: 10, low: 5, high: 20 }),
  entryOf({ id: "drying.hours", unit: "h", value: 48, low: 36, high: 60 }),
  entryOf({ id: "disposal.fee", unit: "$/kg", value: 0.06, low: 0.04, high: 0.1 }),
  entryOf({ id: "oxidant.cost", unit: "$/m3", value: 0.009, low: 0.003, high: 0.02 }),
  entryOf({ id: "hydraulics.viscosity", unit: "m2/s", value: 1e-6, low: 1e-6, high: 1.6e-6 }),
  entryOf({ id: "layer.density", unit: "kg/m3", value: 500, low: 400, high: 800 }),
  entryOf({ id: "layer.settlers", unit: "1/m2", value: 4000, low: 1000, high: 12_000 }),
  entryOf({ id: "boiler.price", unit: "$/(m3/s)", value: 5e5, low: 2e5, high: 15e5 }),
  entryOf({ id: "heat.volume", unit: "kWh/m3.K", value: 1.163, low: 1.16, high: 1.17 }),
  entryOf({ id: "wall.resistance", unit: "m2K/W", value: 0.00035, low: 0.0001, high: 0.001 }),
  entryOf({ id: "growth.rate", unit: "1/degC.d", value: 0.00035, low: 0.0002, high: 0.0006 }),
  entryOf({ id: "air.deficit", unit: "kPa", value: 0.5, low: 0.3, high: 0.8 }),
  entryOf({ id: "arrival.shape", unit: "1", value: 1, low: 1, high: 1.86 }),
);

const applied = (id: string, value: string | number) =>
  applyOverrides(set, [{ id, value, reason: "measured" }]).applied[0];
const refused = (id: string, value: string | number) =>
  applyOverrides(set, [{ id, value, reason: "measured" }]).problems[0];

describe("an override in another unit than its entry", () => {
  // 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 short ton = 907.18474 kg, 1 US gallon = 3.785411784 L, by definition
  it.each([
    ["cleaning.rack.rate", "$12/ft2", 12 / 0.3048 ** 2],
    ["cleaning.rack.rate", "€60/m²", 60],
    ["cleaning.rack.visit", "$9,500", 9500],
    ["shell.maximum-length", "1 in", 25.4],
    ["shell.maximum-length", "3 cm", 30],
    ["cleaning.dry-share", "35 %", 0.35],
    ["cleaning.dry-share", 0.35, 0.35],
    ["growth.yearly-mortality", "60 %/yr", 0.6],
    ["settlement.temperature", "53.6 degF", 12],
    ["cleaning.days", "240 h", 10],
    ["drying.hours", "2 d", 48],
    ["disposal.fee", "$57.63/short ton", 57.63 / 907.18474],
    ["oxidant.cost", "$34.32/Mgal", 34.32 / 3785.411784],
    ["hydraulics.viscosity", "1.3e-6", 1.3e-6],
    ["hydraulics.viscosity", "1.1e-5 ft2/s", 1.1e-5 * 0.3048 ** 2],
    ["hydraulics.viscosity", "1.3e-6 m²/s", 1.3e-6],
    ["layer.density", "28 lb/ft3", (28 * 0.45359237) / 0.3048 ** 3],
    ["layer.density", "28 lb/cu ft", (28 * 0.45359237) / 0.3048 ** 3],
    ["layer.density", "20 to 28 to 35 lb/ft³", (28 * 0.45359237) / 0.3048 ** 3],
    ["layer.density", 450, 450],
    ["layer.settlers", "90 per ft2", 90 / 0.3048 ** 2],
    ["boiler.price", "$20,000/cfs", 20_000 / 0.3048 ** 3],
    ["boiler.price", "$30,000 per mgd", (30_000 * 86_400) / 3785.411784],
    ["heat.volume", "62 BTU/(ft3 degF)", ((62 * 1055.056) / 3.6e6 / 0.3048 ** 3) * 1.8],
    ["wall.resistance", "0.002 ft2 h degF/BTU", (0.002 * 0.3048 ** 2 * 3600) / 1.8 / 1055.056],
    ["growth.rate", "0.001 per degF day", 0.0018],
    ["arrival.shape", 1.5, 1.5],
  ])("is converted for %s: %s", (id, text, expected) => {
    expect((applied(id, text)?.value ?? Number.NaN) / expected).toBeCloseTo(1, 7);
  });

  it("may be in psi, of which the converter keeps six figures: 6.894757 kPa (NIST SP 811)", () => {
    expect((applied("air.deficit", "0.07 psi")?.value ?? Number.NaN) / 0.07).toBeCloseTo(6.894757, 4);
  });

  it("keeps its text and its reason for the report", () => {
    expect(applied("cleaning.rack.rate", "$12/ft2")).toMatchObject({ text: "$12/ft2", reason: "measured" });
  });
});

describe("an override outside the range of its entry", () => {
  it.each([
    ["cleaning.rack.rate", "$19/m2", true],
    ["cleaning.rack.rate", "$20/m2", false],
    ["cleaning.rack.rate", "$200/m2", false],
    ["cleaning.rack.rate", "$201/m2", true],
    // 40 mm is the highest; 1.6 in is 40.64 mm
    ["shell.maximum-length", "1.6 in", true],
    ["shell.maximum-length", "1.5 in", false],
  ])("is used and marked: %s of %s", (id, text, outsideRange) => {
    expect(applied(id, text)).toMatchObject({ outsideRange });
  });
});

describe("an override that cannot be used", () => {
  it.each([
    ["cleaning.rack.rate", "$12/ft", "value", "money per area such as"],
    ["cleaning.rack.rate", 12, "value", "money per area such as"],
    ["cleaning.dry-share", "140 %", "value", "at most 100 %"],
    ["shell.maximum-length", "30", "value", "a unit is missing"],
    ["arrival.shape", "steep", "value", "a bare number"],
    ["arrival.shape", "", "value", "a bare number"],
    ["arrival.shape", Number.POSITIVE_INFINITY, "value", "a bare number"],
    ["hydraulics.viscosity", "1.3e-6 m2", "value", "a kinematic viscosity such as"],
    ["layer.density", "28 lb", "value", "a mass per volume such as"],
    ["roof.rate", "$5/m2", "id", "an id from the assumptions"],
    ["cleaning.roof.rate", "$5/m2", "id", "for instance cleaning.rack.rate"],
    ["constructor", 1, "id", "an id from the assumptions"],
  ])("is told by place, found and allowed: %s of %j", (id, value, field, allowed) => {
    expect(refused(id, value)).toEqual({
      index: 0,
      field,
      found: field === "id" ? id : String(value),
      allowed: expect.stringContaining(allowed),
    });
    expect(applied(id, value)).toBeUndefined();
  });
});

describe("an override outside what the model can bear", () => {
  const layer = entryOf({ id: "conduit.largest-layer", unit: "m", value: 0.015, low: 0.01, high: 0.04 });
  const bounds = { above: 0, to: 1 };
  const allowedFor = (value: string | number) =>
    applyOverrides(setWithin(bounds, layer), [{ id: layer.id, value, reason: "measured" }]).problems.map(
      ({ allowed }) => allowed,
    );

  it.each([
    "15 m",
    "0 mm",
    "0 to 10 to 20 mm",
    "10 mm to 2 m",
    "one of 10 mm (60 %), 2 m (40 %)",
    "0.5 to 2 m as lognormal",
  ])("is refused, its range too: %s", (value) => {
    expect(allowedFor(value)).toEqual(["above 0 and at most 1 m"]);
  });

  it("is refused where a normal range would reach what none may be", () => {
    // By hand: 10 to 30 mm as P10 and P90 are 20 ± 7.8 mm, and three of these 20 ± 23.4 mm.
    expect(allowedFor("10 to 30 mm as normal")).toEqual([
      "above 0 and at most 1 m, also three standard deviations from the middle of a normal range",
    ]);
    // 20 ± 1.6 mm in the same way
    expect(allowedFor("18 to 22 mm as normal")).toEqual([]);
  });

  it.each(["15 mm", "1 m", "10 to 15 to 20 mm"])("is not found in %s", (value) => {
    expect(allowedFor(value)).toEqual([]);
  });

  it("is held to the bounds in the money of the files", () => {
    const rate = entryOf({ id: "labour.maintenance-rate", unit: "$/h", priceYear: 2025 });
    const problemsAt = (factor: number) =>
      applyOverrides(
        setWithin({ from: 0, to: 1000 }, rate),
        [{ id: rate.id, value: "€1500/h", reason: "quote" }],
        exchanged(factor),
      ).problems.map(({ allowed }) => allowed);
    expect(problemsAt(2)).toEqual([]);
    expect(problemsAt(1)).toEqual(["at least 0 and at most 1,000 $/h"]);
  });

  it("names what is read in place of an assumption that is read no longer", () => {
    expect(refused("oxidant.start-density", "5 %")).toEqual({
      index: 0,
      field: "id",
      found: "oxidant.start-density",
      allowed: "protection.start-density, which is read in its place",
    });
  });
});

describe("the reader that the model gets", () => {
  it("turns prices into the currency of the study, and nothing else", () => {
    const assumed = assumedFrom(set, [], exchanged(0.9));
    expect(assumed("cleaning.rack.rate")).toBeCloseTo(54, 12);
    expect(assumed("cleaning.rack.visit")).toBeCloseTo(6300, 9);
    expect(assumed("cleaning.dry-share")).toBe(0.4);
    expect(assumed("shell.maximum-length")).toBe(30);
  });

  it("takes an override as it is, in the currency of the study", () => {
    const { applied: overrides } = applyOverrides(set, [
      { id: "cleaning.rack.rate", value: "€50/m2", reason: "quote" },
    ]);
    expect(assumedFrom(set, overrides, exchanged(0.9))("cleaning.rack.rate")).toBe(50);
    expect(assumedFrom(set, overrides, exchanged(0.9))("cleaning.rack.visit")).toBeCloseTo(6300, 9);
  });

  it("throws on an id that no entry has, naming it", () => {
    expect(() => assumedFrom(set, [], exchanged(1))("cleaning.roof.rate")).toThrow("cleaning.roof.rate");
    expect(() => assumedFrom(set, [], exchanged(1))("__proto__")).toThrow("__proto__");
  });

  it("leaves the set as it was", () => {
    const before = structuredClone([...set.entries]);
    assumedFrom(
      set,
      applyOverrides(set, [{ id: "arrival.shape", value: 1.5, reason: "fit" }]).applied,
      exchanged(2),
    );
    expect([...set.entries]).toEqual(before);
  });
});
