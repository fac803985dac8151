import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { edited, rawOf } from "../../../src/editor/study-text.js";
import { meanOf } from "../../../src/lists.js";
import { daysBetween, levelYears } from "../../../src/model/search/drawdown.js";
import { lakeTerms } from "../../../src/model/search/lake-terms.js";
import { cheapestLevels, levelSearch, scheduleOf, someLevels } from "../../../src/study/levels/level-plan.js";
import type { LevelSearch } from "../../../src/study/levels/level-result.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { searchedIn, studySearch } from "../../../src/study/search/study-search.js";
import { assumptions } from "../../report/runs.js";

const textOf = (example: string) =>
  readFileSync(new URL(`../../../src/examples/${example}.yaml`, import.meta.url), "utf8");
const [thistledown, sorrelBend, ninemoss] = [
  textOf("thistledown"),
  textOf("sorrel-bend"),
  textOf("ninemoss"),
];
const draws = { seed: 1, sampling: "latin-hypercube" } as const;

const oneWindow = { from: ["12-01"], days: [60] };

const withLevels = (text: string, levels: object) =>
  edited(text, [{ at: ["search"], value: { vary: ["levels"], levels } }]);

function planOf(text: string) {
  const study = studySearch(readStudyText(text, "study.yaml"), assumptions);
  if (!study.levels) throw new Error("levels do not vary");
  return { study, levels: study.levels };
}

/** With as many lakes as told. */
function searched(text: string, lakes = 0): LevelSearch {
  const { study, levels } = planOf(text);
  const costs = someLevels(levels, 0, 1);
  const program = searchedIn(study, cheapestLevels(costs)?.id);
  const drawn = drawnStudy(readStudyText(text, "study.yaml"), assumptions, draws);
  const terms = Array.from({ length: lakes }, (_, lake) => lakeTerms(drawn.drawn(0, lake), program));
  return levelSearch(levels, costs, terms);
}

/** The study with a drawdown of its search as its last option. */
function withOption(text: string, { written }: LevelSearch, id: string): string {
  const raw = rawOf(text, "study.yaml") as {
    lake: { otherSchedules?: unknown[] };
    options: Array<Record<string, unknown>>;
  };
  const found = written.find((each) => each.id === id);
  const baseline = raw.options.find(({ steps, schedule }) => steps === undefined && schedule === undefined);
  const schedule = { id: "found", name: "Found", ...found?.levels };
  return edited(text, [
    { at: ["lake", "otherSchedules"], value: [...(raw.lake.otherSchedules ?? []), schedule] },
    {
      at: ["options", raw.options.length],
      value: { ...baseline, id: "found", name: "Found", schedule: "found" },
    },
  ]);
}

const cent = 0.005;

describe("levels of the search", () => {
  it.each([
    ["points, where the lake is infested", thistledown],
    ["points, where it is not", withLevels(sorrelBend, oneWindow)],
    ["a record of years", withLevels(ninemoss, oneWindow)],
  ])("with %s cost what the comparison says of the option that they become, to the cent", (_, text) => {
    const result = searched(text);
    const chosen = [result.byDepth.at(0), result.byDepth.at(-1)];
    for (const each of chosen) {
      if (each?.id === undefined) throw new Error("nothing was tried");
      const { comparison } = runStudy(
        readStudyText(withOption(text, result, each.id), "study.yaml"),
        assumptions,
      );
      const option = comparison.options.find(({ result: { option } }) => option.id === "found");
      expect(Math.abs((option?.result.presentValue.total.toNumber() ?? Number.NaN) - each.cost)).toBeLessThan(
        cent,
      );
      expect(option?.result.schedulePerYear.toNumber()).toBe(each.following);
      expect(Math.abs((option?.netBenefit.toNumber() ?? Number.NaN) - each.saved)).toBeLessThan(cent);
    }
  });

  it("save in simulated lakes what the odds say of the option that they become", () => {
    const lakes = 2;
    const result = searched(thistledown, lakes);
    if (result.best?.id === undefined) throw new Error("nothing pays");
    const after = withOption(thistledown, result, result.best.id);
    const drawn = drawnStudy(readStudyText(after, "study.yaml"), assumptions, draws);
    const saved = Array.from({ length: lakes }, (_, lake) => {
      const { expected } = drawn.futures(0, lake);
      const costs = expected.map((each) => meanOf([...each]));
      return (costs[0] ?? Number.NaN) - (costs.at(-1) ?? Number.NaN);
    });
    expect(result.simulated?.saved).toBeCloseTo(meanOf(saved), 2);
  });

  it("tried at the present level alone are the present levels, which save nothing", () => {
    const result = searched(withLevels(sorrelBend, { lowest: ["2,136 ft"] }));
    expect(result).toMatchObject({ tried: 0, best: undefined, byDepth: [] });
    expect(result.leftOut.present).toBe(9);
    expect(result.present.saved).toBe(0);
  });

  it("are never worse where more are tried, nor than a schedule that an author typed", () => {
    const least = (text: string) => {
      const { best, present } = searched(text);
      return (best ?? present).cost;
    };
    const narrow = { lowest: ["3,186 ft"], from: ["12-01"], days: [60] };
    const wide = { lowest: ["3,186 ft", "3,184 ft"], from: ["12-01", "01-15"], days: [30, 60] };
    const [few, more] = [least(withLevels(thistledown, narrow)), least(withLevels(thistledown, wide))];
    expect(more).toBeLessThanOrEqual(few);
    const cheap = sorrelBend.replace('storageValue: "$2/acre-ft"', 'storageValue: "$0/acre-ft"');
    const { best, present, typed } = searched(withLevels(cheap, oneWindow));
    for (const { cost } of typed) expect((best ?? present).cost).toBeLessThanOrEqual(cost);
  });

  it("keep the limits that a study states", () => {
    const text = withLevels(sorrelBend, {
      minimumPool: "2,084 ft",
      fastestFall: "0.6 ft/d",
      fastestRise: "0.55 ft/d",
      refilledBy: "05-20",
      notBelow: [{ from: "03-20", until: "05-01", elevation: "2,103 ft", reason: "spawning" }],
    });
    const { levels } = planOf(text);
    const { tried, leftOut } = levels.grid;
    expect(tried.length).toBeGreaterThan(0);
    expect(leftOut.rise).toBeGreaterThan(0);
    expect(leftOut["not-below"]).toBeGreaterThan(0);
    const foot = 0.3048;
    const rounding = 0.02 * foot;
    const [present = []] = levelYears(levels.prepared.input.lake);
    for (const { id } of tried) {
      const [course = []] = levelYears(scheduleOf(levels, id));
      expect(Math.min(...course)).toBeGreaterThanOrEqual(2084 * foot - rounding);
      course.forEach((level, day) => {
        const step = (course[(day + 1) % 365] ?? level) - level;
        const usual = (present[(day + 1) % 365] ?? level) - (present[day] ?? level);
        expect(step).toBeGreaterThanOrEqual(Math.min(-0.6 * foot, usual) - rounding);
        expect(step).toBeLessThanOrEqual(Math.max(0.55 * foot, usual) + rounding);
        if (daysBetween(78, day) <= daysBetween(78, 120))
          expect(level).toBeGreaterThanOrEqual(2103 * foot - rounding);
        if (daysBetween(139, day) < 60) expect(level).toBeCloseTo(present[day] ?? Number.NaN, 2);
      });
    }
  });

  it("that cannot be refilled in time are left out, and that is counted", () => {
    const { levels } = planOf(
      withLevels(sorrelBend, { from: ["01-01"], days: [30, 150], refilledBy: "05-01" }),
    );
    expect(levels.grid.leftOut.refill).toBe(5);
  });
});
