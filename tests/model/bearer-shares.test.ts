import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { centsByBearer } from "../../src/model/money/bearer.js";
import { totalOf } from "../../src/model/money/line.js";
import { assumed } from "./assumptions.js";
import { duties, studyOf } from "./study.js";

describe("a structure with several bearers", () => {
  const shared = [
    { id: "city", share: 0.6 },
    { id: "authority", share: 0.4 },
  ];

  it("splits an amount to the cent, what is left over to the largest remainder", () => {
    // By hand: 60.6 and 40.4 of 101 cents; the cent left over goes to the first.
    expect(centsByBearer(shared, 101)).toEqual([
      ["city", 61],
      ["authority", 40],
    ]);
    expect(centsByBearer("city", 101)).toEqual([["city", 101]]);
  });

  it("has bearers that add up to its cost lines, each year", () => {
    const odd = { ...duties, items: [{ name: "Monitoring", cost: 40_000.01, apart: false, fromYear: 1 }] };
    const { infestation, structures } = compare(studyOf([{ ...odd, bearer: shared }]), assumed);
    expect(infestation.byBearer.map(({ id }) => id)).toEqual(["city", "authority"]);
    for (const [year, lines] of (structures[0]?.years ?? []).entries()) {
      const parts = infestation.byBearer.map(({ byYear }) => byYear[year]?.toFixed(2));
      // By hand: 60 % of 40,000.01 is 24,000.006 and 40 % is 16,000.004: the cent left over goes to the first.
      expect(parts).toEqual(["24000.01", "16000.00"]);
      expect(totalOf(lines).toFixed(2)).toBe("40000.01");
    }
  });

  it("shares what is avoided, and the program in proportion, as its losses are shared", () => {
    const [option] = compare(studyOf([{ ...duties, bearer: shared }]), assumed).options;
    const of = (id: string) => option?.bearers.find((each) => each.id === id);
    // By hand: 60 % to 40 % is 1.5 to 1.
    expect(
      of("city")
        ?.avoided.dividedBy(of("authority")?.avoided ?? 1)
        .toNumber(),
    ).toBeCloseTo(1.5, 10);
    expect(
      of("city")
        ?.proportionalShare.dividedBy(of("authority")?.proportionalShare ?? 1)
        .toNumber(),
    ).toBeCloseTo(1.5, 10);
  });
});
