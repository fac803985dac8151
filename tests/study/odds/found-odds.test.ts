import { describe, expect, it } from "vitest";
import { at, meanOf, sumOf } from "../../../src/lists.js";
import { lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import { amountOf } from "../../../src/model/money/line.js";
import { foundCourse, phaseWorth } from "../../../src/model/risk/course.js";
import { drawnStudy, type LakeFutures } from "../../../src/study/odds/draws.js";
import { foundOdds } from "../../../src/study/odds/found-odds.js";
import { joinedFutures } from "../../../src/study/odds/joined-futures.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptionSet } from "../../model/assumptions.js";
import { editedDocument, editedText } from "../example.js";
import { referenceComparison } from "../reference-futures.js";

const settings = { seed: 7, sampling: "latin-hypercube" } as const;
const origin = "invented";
const item = "Permits and reporting";
const phase = { starts: 0, lasts: 5, what: "Something", origin };
const response = { name: "Treatment", cost: "$500,000", chance: "40 %", latestYear: 3, origin };
const watched: Parameters<typeof editedText>[0] = [
  ["options[none].monitoring", { noticedWithin: ["20 %", "60 %"], origin }],
  ["options[weekends].monitoring", { noticedWithin: ["20 %", "70 %"], origin }],
  ["options[full-season].monitoring", { planktonTows: 12, origin }],
  ["options[full-season].response", response],
  ["money.escalation", [{ group: "other", rate: "1 %/yr", origin }]],
];
const { options } = Object(editedDocument(watched));
// As full-season but for what an attempt costs: mussels are noticed and contained as often.
const cheaper = { id: "cheaper", name: "Cheaper treatment", response: { ...response, cost: "$200,000" } };
const responding: typeof watched = [...watched, ["options", [...options, { ...options[2], ...cheaper }]]];
const phases = [
  { ...phase, phase: "suspicion", cost: "$4,000" },
  { ...phase, phase: "delimiting", cost: "$25,000 to $45,000 to $90,000" },
  { ...phase, phase: "treatment" },
  { ...phase, phase: "leaving-boats", item },
  { ...phase, phase: "watch", cost: "$30,000" },
];
const studyOf = (edits: Parameters<typeof editedText>[0]) => readStudyText(editedText(edits), "study.yaml");
const document = studyOf([
  ...responding,
  ["report", { found: { suspectedOn: "07-15", cleanYears: 5, phases } }],
]);
const drawn = drawnStudy(document, assumptionSet, settings);
const requested = document.options.findIndex(({ id }) => id === "full-season");
const expectedIn = (lake: LakeFutures, option: number, which: number, future: number) =>
  at(at(at(lake.found ?? [], option).expected, which), future);

describe("what is done once mussels are found, in the odds", () => {
  it.each([
    [0, 0, 0],
    [0, 9, 5],
    [1, 2, 4],
  ] as const)(
    "is in future %i/%i/%i what the whole comparison with the drawn values has",
    (block, lake, future) => {
      const fast = drawn.futures(block, lake);
      const { comparison, results } = referenceComparison(document, assumptionSet, drawn, [
        block,
        lake,
        future,
      ]);
      results.forEach((result, option) => {
        const { response } = result.option;
        const { payments } = foundCourse(result.statesByYear, {
          success: response?.chance ?? 0,
          cleanYears: 5,
        });
        const priced = (when: "found" | "watched", amount: number) =>
          phaseWorth({ when, parts: [{ amount, fromAge: 0, inYear: comparison.discountFactors }] }, payments);
        // What the comparison has comes from its own cost lines and attempts.
        const duty = sumOf(
          result.schedule.structures.flatMap(({ years }) =>
            years.flatMap((lines, age) =>
              lines
                .filter(({ what }) => what === item)
                .map(
                  (line) =>
                    amountOf(line).toNumber() * at(result.weights.rising.get("other")?.noticed ?? [], age),
                ),
            ),
          ),
        );
        const attempts = result.containment?.presentValue.toNumber() ?? 0;
        expect(expectedIn(fast, option, 0, future)).toBeCloseTo(priced("found", 4000), 6);
        // Its lines are whole cents in each of 30 years.
        expect(Math.abs(expectedIn(fast, option, 2, future) - attempts)).toBeLessThan(30 * 0.005);
        expect(Math.abs(expectedIn(fast, option, 3, future) - duty)).toBeLessThan(30 * 0.005);
        expect(expectedIn(fast, option, 4, future)).toBeCloseTo(priced("watched", 30_000), 6);
      });
    },
  );

  it("moves nothing of the comparison, and draws a cost that has a range", () => {
    const without = drawnStudy(studyOf(responding), assumptionSet, settings);
    const [one, other] = [drawn.futures(0, 3), without.futures(0, 3)];
    expect(one.expected).toEqual(other.expected);
    expect(one.cost).toEqual(other.cost);
    expect(other.found).toBeUndefined();
    expect(drawn.inputs.map(({ id }) => id)).toEqual(without.inputs.map(({ id }) => id));
    // Of a survey each time and a suspicion each time the ratio is that of their prices: 25,000 to 90,000 over 4,000.
    const ratios = Array.from({ length: 4 }, (_, lake) => {
      const futures = drawn.futures(0, lake);
      return expectedIn(futures, 0, 1, 0) / expectedIn(futures, 0, 0, 0);
    });
    expect(new Set(ratios.map((ratio) => ratio.toFixed(6))).size).toBe(4);
    for (const ratio of ratios) {
      expect(ratio).toBeGreaterThan(25 / 4);
      expect(ratio).toBeLessThan(90 / 4);
    }
  });

  it("adds up, and comes out on average at what is expected, within four standard errors", () => {
    const lakes = Array.from({ length: 2 * lakesPerBlock }, (_, lake) =>
      drawn.futures(Math.floor(lake / lakesPerBlock), lake % lakesPerBlock),
    );
    const isCounted = [false, false, true, true, false];
    const odds = foundOdds(at(joinedFutures(lakes).options, requested), {
      blocks: 2,
      confidence: 0.95,
      isCounted,
    });
    if (!odds) throw new Error("nothing is told of the find");
    expect(odds.all.mean.value).toBeCloseTo(sumOf(odds.phases.map(({ mean }) => mean.value)), 4);
    expect(odds.all.mean.value).toBeCloseTo(odds.counted.mean.value + odds.beside.mean.value, 4);
    expect(odds.all.high).toBeGreaterThan(odds.all.mean.value);
    expect(odds.times.contained).toBeLessThan(odds.times.tried);
    expect(odds.isFound.value).toBeLessThan(odds.times.found + 0.05);
    const gaps = lakes.flatMap((lake) =>
      [...at(at(lake.found ?? [], requested).cost, 0)].map(
        (cost, future) => cost - expectedIn(lake, requested, 0, future),
      ),
    );
    const mean = meanOf(gaps);
    const error = Math.sqrt(meanOf(gaps.map((gap) => (gap - mean) ** 2)) / (gaps.length - 1));
    expect(Math.abs(mean)).toBeLessThan(4 * error);
  });
});
