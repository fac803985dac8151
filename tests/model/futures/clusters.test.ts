import { describe, expect, it } from "vitest";
import { clusteredMean, clusteredQuantiles, clusteredShare } from "../../../src/model/futures/clusters.js";
import { randomStream } from "../../../src/model/random/generator.js";
import { normalQuantile } from "../../../src/model/uncertainty/normal-quantile.js";

const clusters = 40;
const size = 32;
const repeats = 300;

/** Normal draws of variance 2, half of it common to the draws of a cluster. */
function alike(seed: number): Float64Array {
  const { uniform } = randomStream(seed, "alike");
  const normal = () => normalQuantile(Math.max(uniform(), Number.EPSILON));
  const values = new Float64Array(clusters * size);
  for (let cluster = 0; cluster < clusters; cluster++) {
    const common = normal();
    for (let draw = 0; draw < size; draw++) values[cluster * size + draw] = common + normal();
  }
  return values;
}

const samples = Array.from({ length: repeats }, (_, repeat) => alike(repeat));
const shareOf = (holds: (values: Float64Array) => boolean) => samples.filter(holds).length / repeats;
/** Four standard errors of a share near 0.95 among the repeats. */
const slack = 4 * Math.sqrt((0.95 * 0.05) / repeats);

describe("draws in clusters", () => {
  it.each([0.5, 0.8, 0.9])("have the quantile %d inside its interval as often as it says", (share) => {
    const truth = Math.SQRT2 * normalQuantile(share);
    const covered = shareOf((values) => {
      const [{ low, high } = { low: 0, high: 0 }] = clusteredQuantiles(values, clusters, [share], 0.95);
      return low <= truth && truth <= high;
    });
    expect(Math.abs(covered - 0.95)).toBeLessThan(slack);
  });

  it("have a mean with the standard error of the clusters' means", () => {
    // Means 2, 4 and 9: their variance is (9 + 1 + 16)/2 = 13, by hand.
    const { value, standardError } = clusteredMean([1, 3, 4, 4, 8, 10], 3);
    expect(value).toBe(5);
    expect(standardError).toBeCloseTo(Math.sqrt(13 / 3), 12);
  });

  it("have a share whose interval stays in 0 to 1", () => {
    // Shares 0, 0, 0 and 1 of four clusters: mean 1/4, standard error sqrt(1/4/4) = 1/4, by hand; t of 3 degrees of
    // freedom is 3.182 at 97.5 % (printed tables of t, from memory).
    const flags = [0, 0, 0, 0, 0, 0, 1, 1];
    const { value, low, high } = clusteredShare(flags, 4, 0.95);
    expect([value, low]).toEqual([0.25, 0]);
    expect(high).toBe(1);
    expect(clusteredShare(flags, 4, 0.5).high).toBeCloseTo(0.25 + 0.7649 * 0.25, 4);
    const others = flags.map((each) => 1 - each);
    expect(clusteredShare(others, 4, 0.95)).toMatchObject({ value: 0.75, high: 1 });
  });

  it("are refused where they do not divide evenly, or are one cluster alone", () => {
    expect(() => clusteredMean([1, 2, 3], 2)).toThrow(
      "3 draws in 2 clusters; allowed: as many draws in each",
    );
    expect(() => clusteredMean([1, 2, 3], 1)).toThrow("means of clusters: 1 values; allowed: 2 or more");
  });
});
