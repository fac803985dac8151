import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Dimension } from "../../src/units/dimension.js";
import { type DimensionName, dimensions } from "../../src/units/dimensions.js";
import { parseQuantity, toDisplay } from "../../src/units/quantity.js";
import { relativeError, relativeTolerance } from "./definitions.js";

type System = "us" | "si";

const systems: readonly System[] = ["us", "si"];
const names = Object.keys(dimensions) as DimensionName[];
const namesAndSystems = names.flatMap((name) => systems.map((system) => [name, system] as const));

/** A number in the display unit of a system, written as an author would write it. */
function written(shown: string | number, name: DimensionName, system: System): string {
  const dimension: Dimension = dimensions[name];
  const { label } = dimension[system];
  if (dimension.money) return label === "each" ? `$${shown}` : `$${shown}/${label}`;
  return label === "each" ? `${shown}` : `${shown} ${label}`;
}

/** Values that a dimension may take, short of the ends of its range so that rounding cannot leave it. */
function values(name: DimensionName): fc.Arbitrary<number> {
  const { minimum = -1e6, maximum = 1e9 }: Dimension = dimensions[name];
  const margin = Math.min(1e-6, (maximum - minimum) * 1e-6);
  return fc.double({ min: minimum, max: maximum - margin, noNaN: true }).filter((value) => {
    return value === 0 || Math.abs(value) > 1e-9;
  });
}

describe("a value that is shown and typed in again", () => {
  it.each(namesAndSystems)("comes back as %s in %s units", (name, system) => {
    fc.assert(
      fc.property(values(name), (value) => {
        const text = written(toDisplay(value, name, system), name, system);
        const floor = name === "temperature" ? 100 : 0;
        expect(relativeError(parseQuantity(text, name).value, value, floor)).toBeLessThan(relativeTolerance);
      }),
    );
  });
});

describe("separators of thousands", () => {
  const bounded: readonly DimensionName[] = ["share", "yearlyShare", "angle", "temperature"];

  it.each(namesAndSystems.filter(([name]) => !bounded.includes(name)))(
    "do not change the value of %s in %s units",
    (name, system) => {
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 99 }), (whole, cents) => {
          const decimals = `.${String(cents).padStart(2, "0")}`;
          const plain = written(`${whole}${decimals}`, name, system);
          const grouped = written(`${whole.toLocaleString("en-US")}${decimals}`, name, system);
          expect(parseQuantity(grouped, name).value).toBe(parseQuantity(plain, name).value);
        }),
      );
    },
  );
});

/** Dimensions that measure the same thing, so that a unit of one is a unit of the others. */
const kinds: ReadonlyArray<readonly DimensionName[]> = [
  ["elevation", "length", "smallLength"],
  ["area", "landArea"],
  ["volume", "treatedVolume"],
  ["flow"],
  ["speed", "levelRate"],
  ["temperature"],
  ["concentration", "salinity", "density"],
  ["conductivity"],
  ["angle"],
  ["duration", "hours", "shortTime", "years"],
  ["mass"],
  ["areaMass"],
  ["energy"],
  ["heatTransfer"],
  ["capacityRate"],
  ["share", "yearlyShare", "yearlyChange"],
  ["money"],
  ["moneyPerYear", "moneyPerHour", "moneyPerDay"],
  ["moneyPerArea", "moneyPerLandArea"],
  ["moneyPerMass"],
  ["moneyPerVolume", "moneyPerTreatedVolume"],
  ["moneyPerEnergy"],
  ["moneyPerFlow"],
  ["countPerArea"],
  ["viscosity"],
  ["heatResistance"],
  ["pressure"],
  ["warmthRate"],
  ["volumetricHeat"],
  ["count"],
];

/** Units for a text of each kind; a count is left out as it has none. */
const foreign = kinds
  .flat()
  .filter((name) => name !== "count")
  .map((name) => ({ name, like: kinds.find((kind) => kind.includes(name)) ?? [] }));

describe("a unit of another dimension", () => {
  it("is tried against every dimension", () => {
    expect([...kinds.flat()].sort()).toEqual([...names].sort());
  });

  it.each(names)("is refused for %s, with an example", (wanted) => {
    const others = foreign.filter(({ like }) => !like.includes(wanted));
    const { example } = dimensions[wanted];
    fc.assert(
      fc.property(
        fc.constantFrom(...others),
        fc.constantFrom(...systems),
        fc.double({ min: 0, max: 90, noNaN: true, noDefaultInfinity: true }),
        ({ name }, system, number) => {
          const unitText = name === "angle" ? `${number} deg` : written(number, name, system);
          expect(() => parseQuantity(unitText, wanted)).toThrow(example);
        },
      ),
      { numRuns: 300 },
    );
  });
});
