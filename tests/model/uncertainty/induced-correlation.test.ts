import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import { cholesky, multiplied, solvedForward } from "../../../src/model/uncertainty/cholesky.js";
import { withCommonFactor, withRankCorrelation } from "../../../src/model/uncertainty/induced-correlation.js";
import { latinHypercube } from "../../../src/model/uncertainty/latin-hypercube.js";
import { momentsOf, standardError } from "../../../src/model/uncertainty/running-moments.js";
import { rankCorrelation } from "./rank-correlation.js";

const plan = (seed: number, ids: readonly string[], count: number) => [
  ...latinHypercube(seed, ids, count).values(),
];
const sorted = (values: readonly number[]) => values.toSorted((one, other) => one - other);

describe("the Cholesky factor", () => {
  it("is that of the textbook example", () => {
    // Often printed: (4 12 -16; 12 37 -43; -16 -43 98) = L Lᵀ with L = (2; 6 1; -8 5 3); check by hand: 64+25+9 = 98.
    const matrix = [
      [4, 12, -16],
      [12, 37, -43],
      [-16, -43, 98],
    ];
    expect(cholesky("matrix", matrix, "")).toEqual([[2], [6, 1], [-8, 5, 3]]);
  });

  it("solves for what it is multiplied with", () => {
    const entry = fc.double({ min: -5, max: 5, noNaN: true });
    const diagonal = fc.double({ min: 0.5, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(diagonal, entry, diagonal, entry, entry, diagonal),
        fc.tuple(entry, entry, entry),
        (l, x) => {
          const factor = [[l[0]], [l[1], l[2]], [l[3], l[4], l[5]]];
          // The condition of L is below (5/0.5)³ or so, so that 1e-10 leaves room for rounding.
          solvedForward(factor, multiplied(factor, x)).forEach((each, index) => {
            expect(Math.abs(each - at(x, index))).toBeLessThan(1e-10);
          });
        },
      ),
      { seed: 321 },
    );
  });
});

const target = [
  [1, 0.6, -0.3],
  [0.6, 1, 0.2],
  [-0.3, 0.2, 1],
];

describe("induced rank correlation", () => {
  it("keeps each column's values, and the first column's order", () => {
    const columns = plan(1, ["a", "b", "c"], 500);
    const found = withRankCorrelation(columns, target);
    found.forEach((column, index) => {
      expect(sorted(column)).toEqual(sorted(at(columns, index)));
    });
    expect(found[0]).toEqual(columns[0]);
    expect(found[1]).not.toEqual(columns[1]);
  });

  it("has Spearman's correlations of the target on average, within 4 standard errors", () => {
    const [count, seeds] = [1000, 50];
    const runs = Array.from({ length: seeds }, (_, seed) =>
      withRankCorrelation(plan(seed, ["a", "b", "c"], count), target),
    );
    for (const [one, other] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      const moments = momentsOf(runs.map((columns) => rankCorrelation(at(columns, one), at(columns, other))));
      const expected = at(at(target, one), other);
      expect(Math.abs(moments.mean - expected)).toBeLessThan(4 * standardError(moments));
      // The method frees the scores of their chance correlation: far surer than independent pairs, (1 - ρ²)/√n.
      expect(Math.sqrt(seeds) * standardError(moments)).toBeLessThan(
        (1 - expected ** 2) / Math.sqrt(count) / 2,
      );
    }
  });

  it("of none leaves of chance's rank correlation what normal scores do not explain", () => {
    // Ranks and normal scores of the same independent columns have correlations that are themselves correlated by 3/π
    // (from the efficiency 9/π² of Spearman's, from memory); so √(1 - 9/π²) of 1/√(n - 1) is left. A root mean square of
    // n runs has the relative error 1/√(2n): within 4 of them.
    const [count, seeds] = [400, 100];
    const squares = Array.from({ length: seeds }, (_, seed) => {
      const independent = [
        [1, 0],
        [0, 1],
      ];
      const [first = [], second = []] = withRankCorrelation(plan(seed, ["a", "b"], count), independent);
      return rankCorrelation(first, second) ** 2 * (count - 1);
    });
    const left = Math.sqrt(momentsOf(squares).mean);
    expect(Math.abs(left / Math.sqrt(1 - 9 / Math.PI ** 2) - 1)).toBeLessThan(4 / Math.sqrt(2 * seeds));
  });

  it("leaves the columns before one added at the end as they are", () => {
    const columns = plan(4, ["a", "b", "c"], 100);
    const two = withRankCorrelation(
      columns.slice(0, 2),
      target.slice(0, 2).map((row) => row.slice(0, 2)),
    );
    expect(withRankCorrelation(columns, target).slice(0, 2)).toEqual(two);
  });

  it("refuses correlations that cannot be at once", () => {
    const impossible = [
      [1, 0.9, -0.9],
      [0.9, 1, 0.9],
      [-0.9, 0.9, 1],
    ];
    expect(() => withRankCorrelation(plan(1, ["a", "b", "c"], 50), impossible)).toThrow(
      /rank correlation matrix: row 2 cannot stand .* positive definite.*Bring the correlations nearer to 0/,
    );
    expect(() =>
      withRankCorrelation(plan(1, ["a", "b"], 50), [
        [1, 1],
        [1, 1],
      ]),
    ).toThrow(/row 1 cannot stand/);
  });

  it.each([
    [
      "[2,2]",
      [
        [1, 0.5],
        [0.5, 2],
      ],
      "row 1, column 1 is 2; allowed: -1 to 1",
    ],
    [
      "a diagonal below 1",
      [
        [1, 0.5],
        [0.5, 0.9],
      ],
      "row 1, column 1 is 0.9; allowed: 1",
    ],
    [
      "unequal halves",
      [
        [1, 0.5],
        [0.4, 1],
      ],
      "row 0, column 1 is 0.5, mirrored 0.4; allowed: equal",
    ],
    [
      "NaN",
      [
        [1, Number.NaN],
        [Number.NaN, 1],
      ],
      "row 0, column 1 is NaN; allowed: a finite number",
    ],
    ["another size", [[1]], "rows of 1; allowed: 2 rows of 2"],
    ["too few rows", [[1, 0]], "rows of 2; allowed: 2 rows of 2"],
    ["a ragged matrix", [[1, 0], [0]], "rows of 2, 1; allowed: 2 rows of 2"],
  ])("refuses a matrix with %s", (_, matrix, message) => {
    expect(() => withRankCorrelation(plan(1, ["a", "b"], 50), matrix)).toThrow(message);
  });

  it("refuses columns that are too short, uneven, alike or none", () => {
    const [column = []] = plan(1, ["a"], 20);
    expect(() => withCommonFactor([column, column], 0.5)).toThrow(
      /correlations of 2 columns as drawn: row 1 cannot stand .*Draw each column by itself/,
    );
    expect(() =>
      withRankCorrelation(plan(1, ["a", "b"], 2), [
        [1, 0],
        [0, 1],
      ]),
    ).toThrow("2 values; allowed: 3 or more");
    expect(() =>
      withRankCorrelation(
        [
          [1, 2, 3],
          [1, 2, 3, 4],
        ],
        [
          [1, 0],
          [0, 1],
        ],
      ),
    ).toThrow("allowed: as many in both");
    expect(() => withRankCorrelation([], [])).toThrow("0 columns");
  });
});

describe("a common factor", () => {
  it("gives every pair the same rank correlation on average, within 4 standard errors", () => {
    const seeds = 40;
    const runs = Array.from({ length: seeds }, (_, seed) =>
      withCommonFactor(plan(seed, ["a", "b", "c", "d"], 1000), 0.7),
    );
    for (const [one, other] of [
      [0, 1],
      [0, 3],
      [2, 3],
    ] as const) {
      const moments = momentsOf(runs.map((columns) => rankCorrelation(at(columns, one), at(columns, other))));
      expect(Math.abs(moments.mean - 0.7)).toBeLessThan(4 * standardError(moments));
    }
  });

  it("at 1 makes all rise and fall with the first, each with its own values", () => {
    const columns = plan(2, ["a", "b", "c"], 300);
    const found = withCommonFactor(columns, 1);
    found.forEach((column, index) => {
      expect(sorted(column)).toEqual(sorted(at(columns, index)));
      expect(rankCorrelation(at(columns, 0), column)).toBeCloseTo(1, 12);
    });
  });

  it("leaves one column as it is, and those before one added at the end", () => {
    const columns = plan(2, ["a", "b", "c"], 300);
    expect(withCommonFactor(columns.slice(0, 1), 0.5)).toEqual(columns.slice(0, 1));
    expect(withCommonFactor(columns, 0.5).slice(0, 2)).toEqual(withCommonFactor(columns.slice(0, 2), 0.5));
  });

  it.each([-0.1, 1.1, Number.NaN])("is refused with the correlation %d", (correlation) => {
    expect(() => withCommonFactor(plan(2, ["a", "b"], 30), correlation)).toThrow(
      `rank correlation of the group is ${correlation}; allowed: 0 to 1`,
    );
  });
});
