import { describe, expect, it } from "vitest";
import { futuresPerLake, lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import { mostFutures } from "../../../src/study/odds/odds-settings.js";
import { rankCorrelations } from "../../../src/study/odds/sensitivity-ranks.js";
import type { NamedInput } from "../../../src/study/odds/uncertain-inputs.js";
import { blockDraws } from "../../model/futures/block-draws.js";
import { rankCorrelation } from "../../model/uncertainty/rank-correlation.js";

const input = (id: string, stage: NamedInput["stage"]): NamedInput => ({
  id,
  name: `name of ${id}`,
  stage,
  distribution:
    id === "coin"
      ? { kind: "discrete", values: [0, 1].map((value) => ({ value, weight: 1 })) }
      : { kind: "uniform", low: 0, high: 1 },
});
const plan = {
  seed: 2,
  sampling: "latin-hypercube" as const,
  groups: [],
  inputs: [
    input("area", "lake"),
    input("coin", "lake"),
    input("idle", "lake"),
    input("chance", "chances"),
    input("other", "chances"),
  ],
};
const lakes = 24 * lakesPerBlock;

/** Values of an input in each future, block by block. */
function drawn(id: string): number[] {
  return Array.from({ length: lakes / lakesPerBlock }, (_, block) => blockDraws(plan, block)).flatMap(
    ({ lake, chances }) =>
      chances.get(id) ?? (lake.get(id) ?? []).flatMap((value) => Array<number>(futuresPerLake).fill(value)),
  );
}

const [area, coin, chance] = ["area", "coin", "chance"].map(drawn) as [number[], number[], number[]];

describe("rank correlations over the futures", () => {
  const values = area.map((each, draw) => each * (chance[draw] ?? 0) ** 2 - (coin[draw] ?? 0) / 4);
  const found = rankCorrelations(plan, Float64Array.from(values));

  it("are Spearman's of the futures written out in full", () => {
    expect(found).toHaveLength(5);
    for (const { id, correlation } of found) {
      expect(correlation, id).toBeCloseTo(rankCorrelation(drawn(id), values), 10);
    }
  });

  it("come strongest first, with names, and within the noise where there is no effect", () => {
    const sizes = found.map(({ correlation }) => Math.abs(correlation));
    expect(sizes).toEqual(sizes.toSorted((one, other) => other - one));
    expect(found[0]).toMatchObject({ id: "chance", name: "name of chance" });
    const of = (id: string) => Math.abs(found.find((each) => each.id === id)?.correlation ?? Number.NaN);
    // Standard deviation of Spearman's without correlation: 1/√(m−1) (common practice; Kendall and Gibbons, from memory).
    expect(of("idle")).toBeLessThan(4 / Math.sqrt(lakes - 1));
    expect(of("other")).toBeLessThan(4 / Math.sqrt(lakes * futuresPerLake - 1));
  });

  it("are 1 and −1 for what alone decides, of either stage", () => {
    const rising = rankCorrelations(
      plan,
      Float64Array.from(area, (each) => Math.exp(each)),
    );
    expect(rising[0]).toMatchObject({ id: "area" });
    expect(rising[0]?.correlation).toBeCloseTo(1, 12);
    const falling = rankCorrelations(
      plan,
      Float64Array.from(chance, (each) => -each),
    );
    expect(falling[0]).toMatchObject({ id: "chance" });
    expect(falling[0]?.correlation).toBeCloseTo(-1, 12);
  });

  it("take as many futures as a study may ask for, of an input within limits", () => {
    const blocks = mostFutures / (lakesPerBlock * futuresPerLake);
    const limited = { ...input("chance", "chances"), limits: { low: -1, high: 2 } };
    const alone = { ...plan, inputs: [limited] };
    const benefits = Array.from({ length: blocks }, (_, block) => blockDraws(alone, block)).flatMap(
      ({ chances }) => chances.get("chance") ?? [],
    );
    const [found] = rankCorrelations(alone, Float64Array.from(benefits));
    expect(found?.correlation).toBeCloseTo(1, 9);
  });

  it("are none where the net benefit does not vary", () => {
    expect(
      rankCorrelations(
        plan,
        Float64Array.from(area, () => 7),
      ),
    ).toEqual([]);
  });
});
