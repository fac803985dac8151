import { expect, it } from "vitest";
import { figureDifferences } from "../../src/issue/figure-differences.js";

it("shares of the variance, which earlier reports hold, are not held against results without them", () => {
  const matters = { netBenefit: 7, tornado: [{ id: "a" }] };
  const shares = [{ ids: ["a"], first: { value: 0.5, standardError: 0.1 } }];
  const issued = { odds: { matters: { ...matters, shares } } };
  expect(figureDifferences(issued, { odds: { matters } })).toEqual({ compared: 2, differences: [] });
  expect(figureDifferences(issued, { odds: { matters: { ...matters, netBenefit: 8 } } }).differences).toEqual(
    [{ place: "odds.matters.netBenefit", issued: "7", recomputed: "8" }],
  );
});
