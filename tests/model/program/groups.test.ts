import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noMoney } from "../../../src/model/money/decimal.js";
import { sumOf, totalOf } from "../../../src/model/money/line.js";
import { programLines } from "../../../src/model/program/cost.js";
import { byGroup, costGroups } from "../../../src/model/program/groups.js";
import { anyOption, money } from "./any-option.js";

describe("the groups of a program's lines", () => {
  it("partition the lines: each stands in one group, in the order of the list", () => {
    fc.assert(
      fc.property(anyOption, (option) => {
        const lines = programLines(option, money);
        const groups = byGroup(lines);
        const grouped = groups.flatMap((each) => each.lines);
        expect(grouped).toHaveLength(lines.length);
        expect(new Set(grouped)).toEqual(new Set(lines));
        for (const { group, lines: own } of groups) {
          expect(own.length).toBeGreaterThan(0);
          for (const line of own) expect(line.group).toBe(group);
        }
        const order = groups.map(({ group }) => [...costGroups, "other-revenue", "fees"].indexOf(group));
        expect(order).toEqual([...new Set(order)].sort((one, other) => one - other));
      }),
      { seed: 211, numRuns: 200 },
    );
  });

  it("have subtotals that add up to the total to the cent", () => {
    fc.assert(
      fc.property(anyOption, (option) => {
        const lines = programLines(option, money);
        const subtotals = byGroup(lines).map((each) => totalOf(each.lines));
        expect(sumOf(subtotals).equals(totalOf(lines))).toBe(true);
      }),
      { seed: 212, numRuns: 200 },
    );
  });

  it("are none where there are no lines", () => {
    expect(byGroup([])).toEqual([]);
    expect(totalOf([]).equals(noMoney)).toBe(true);
  });
});
