import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import type { Source } from "../../src/assumptions/entry.js";
import { planningRatesFile, readPlanningRates } from "../../src/assumptions/planning-rates.js";
import { planningRate } from "../../src/model/money/planning-rate.js";
import { realSet } from "./real.js";

const sources = new Map<string, Source>([["notices", { citation: "Notices", read: "text" }]]);
const notice = {
  fiscalYear: 2025,
  percent: 3,
  notice: "89 FR 100533",
  basis: "published",
  source: "notices",
};

function read(content: unknown) {
  const problems: string[] = [];
  const rates = readPlanningRates(
    new Map([[planningRatesFile, stringify(content)]]),
    sources,
    undefined,
    problems,
  );
  return { problems, rates };
}

describe("the table of federal water-planning rates", () => {
  const { planningRates } = realSet();

  it("has the rates of the notices that were read", () => {
    // Bureau of Reclamation: 69 FR 22556, 76 FR 73674, 84 FR 68943, 89 FR 100533 (texts).
    const rateOf = (year: number) => planningRates.get(year)?.rate;
    expect([2004, 2012, 2020, 2025].map(rateOf)).toEqual([0.05625, 0.04, 0.0275, 0.03]);
  });

  it("moves by a quarter point at most from one year to the next, as the rule has it", () => {
    const pairs = [...planningRates.values()].flatMap(({ fiscalYear, rate }) => {
      const before = planningRates.get(fiscalYear - 1);
      return before ? [{ before: before.rate, rate }] : [];
    });
    expect(pairs.length).toBeGreaterThan(3);
    for (const { before, rate } of pairs) expect(planningRate(rate, before).rate).toBeCloseTo(rate, 12);
  });

  it("is that of this version for files of an earlier one, which had none", () => {
    expect(readPlanningRates(new Map(), sources, planningRates, [])).toBe(planningRates);
  });

  it.each([
    ["a rate that is no eighth", { ...notice, percent: 3.1 }, "1, percent: eighths of a percent"],
    ["no notice", { ...notice, notice: "" }, "1, notice"],
    ["an unknown source", { ...notice, source: "a-friend" }, '2025 names the source "a-friend"'],
    ["an unknown key", { ...notice, yield: 4 }, "yield"],
  ])("is refused with %s, by file, place and remedy", (_mistake, entry, words) => {
    const { problems } = read([entry]);
    expect(problems).toEqual([expect.stringContaining(words)]);
    expect(problems[0]).toMatch(/^planning-rates\.yaml: .*(Correct|Add) .*\.$/);
  });

  it("is refused with a year twice, or with no list", () => {
    expect(read([notice, notice]).problems).toEqual([
      expect.stringContaining("2025 stands here a second time"),
    ]);
    expect(read({}).problems).toEqual([expect.stringContaining("the whole file")]);
  });
});
