import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { edited, rawOf } from "../../../src/editor/study-text.js";
import { meanOf } from "../../../src/lists.js";
import { lakeTerms } from "../../../src/model/search/lake-terms.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { searchPlan } from "../../../src/study/search/plan.js";
import { type Placed, searching } from "../../../src/study/search/points.js";
import type { ProgramSearch, SearchPoint } from "../../../src/study/search/result.js";
import { programSearch } from "../../../src/study/search/search.js";
import { writtenOption } from "../../../src/study/search/written.js";
import { assumptions } from "../../report/runs.js";
import { smallLakeText } from "../small-lake.js";

const textOf = (example: string) =>
  readFileSync(new URL(`../../../src/examples/${example}.yaml`, import.meta.url), "utf8");
const ninemoss = smallLakeText;
/** Sorrel Bend with one intake and the lake's duties: what is searched is the program. */
const sorrelBend = withStructures(textOf("sorrel-bend"), ["city-intake", "reservoir-wide"]);
const results = new Map<string, ProgramSearch>();
const draws = { seed: 1, sampling: "latin-hypercube" } as const;
const lakes = 2;

const withSearch = (text: string, search: object) => edited(text, [{ at: ["search"], value: search }]);

/** The same result for every test that asks for it. */
function searched(text: string): ProgramSearch {
  const known = results.get(text) ?? searchedAnew(text);
  results.set(text, known);
  return known;
}

function searchedAnew(text: string): ProgramSearch {
  const document = readStudyText(text, "study.yaml");
  const plan = searchPlan(document, assumptions);
  const drawn = drawnStudy(document, assumptions, draws);
  const terms = Array.from({ length: lakes }, (_, lake) => lakeTerms(drawn.drawn(0, lake), plan.searched));
  return programSearch(plan, terms);
}

function withStructures(text: string, ids: readonly string[]): string {
  const { structures } = rawOf(text, "study.yaml") as { structures: ReadonlyArray<{ id: string }> };
  return edited(text, [{ at: ["structures"], value: structures.filter(({ id }) => ids.includes(id)) }]);
}

/** The study with a program of the search as its last option. */
function withOption(text: string, result: ProgramSearch, point: SearchPoint): string {
  const { options } = rawOf(text, "study.yaml") as { options: Array<Record<string, unknown>> };
  const base = options.find(({ id }) => id === result.baseId);
  if (!base) throw new Error("no option to start from");
  const value = writtenOption(base, point, { id: "found", name: "Found", lumpShare: result.lumpShare });
  return edited(text, [{ at: ["options", options.length], value }]);
}

/** What the odds say of the last option in the same draws: their own way, option by option and future by future. */
function ordinary(text: string) {
  const document = readStudyText(text, "study.yaml");
  const drawn = drawnStudy(document, assumptions, draws);
  const futures = Array.from({ length: lakes }, (_, lake) => drawn.futures(0, lake));
  const last = (lists: ReadonlyArray<readonly number[]>) => lists.at(-1) ?? [];
  return {
    cost: meanOf(futures.flatMap(({ expected }) => last(expected))),
    program: meanOf(futures.flatMap(({ program }) => last(program))),
    chance: meanOf(futures.flatMap(({ everInfested }) => last(everInfested))),
  };
}

const cent = 0.005;
/** Half a cent of each of four lines that change, in each year: lines are rounded, what is in proportion to them is not. */
const roundings = 4 * cent * 20;

describe("a program of the search", () => {
  it.each([
    ["with open hours, seals, fees and a response", sorrelBend],
    [
      "with other fees and a measure of its own",
      withSearch(sorrelBend, {
        vary: ["fees", "measures", "wash"],
        fees: [0.5, 1.5],
        measures: [
          { id: "radio", name: "Radio", cost: "$9,000/yr", declaration: "70 %", origin: "invented" },
        ],
      }),
    ],
  ])("%s costs and risks what the option does that it becomes, to the cent", (_, written) => {
    // A share typed as one number is drawn around that number, and half of it has another range than half of a draw.
    const text = written.replaceAll(/deterrence: \d+ %, /g, "");
    const result = searched(text);
    const chosen = [result.frontier.at(0), result.frontier.at(Math.floor(result.frontier.length / 2))];
    for (const point of chosen) {
      if (!point) throw new Error("no frontier");
      const after = withOption(text, result, point);
      const { cost, program, chance } = ordinary(after);
      expect(Math.abs(point.cost - cost)).toBeLessThan(roundings);
      expect(Math.abs(point.program - program)).toBeLessThan(roundings);
      expect(point.chance).toBeCloseTo(chance, 10);
    }
  });

  it.each([
    ["open hours, deterrence and a response", sorrelBend],
    ["a coverage of its own and years of growth", textOf("ninemoss")],
  ])("with %s costs at central values what the comparison says of the option that it becomes", (_, text) => {
    const plan = searchPlan(readStudyText(text, "study.yaml"), assumptions);
    const { input, assumed: source } = plan.prepared;
    const central = { input, source, futures: [{ input, source }] };
    const result = programSearch(plan, [lakeTerms(central, plan.searched)]);
    for (const point of [result.frontier[1], result.frontier.at(-2)]) {
      if (!point) throw new Error("no frontier");
      const after = readStudyText(withOption(text, result, point), "study.yaml");
      const found = runStudy(after, assumptions).comparison.options.at(-1)?.result;
      const { program, infestation } = found?.presentValue ?? {};
      expect(Math.abs((program?.toNumber() ?? Number.NaN) - point.program)).toBeLessThan(roundings);
      expect(Math.abs((infestation?.toNumber() ?? Number.NaN) - point.loss)).toBeLessThan(cent);
    }
  });

  it("costs a year what the comparison says of the option that it becomes", () => {
    const result = searched(sorrelBend);
    const point = result.answers.find(({ question }) => question === "under-chance")?.point;
    if (!point) throw new Error("no program under the chance");
    const after = readStudyText(withOption(sorrelBend, result, point), "study.yaml");
    const compared = runStudy(after, assumptions).comparison.options.at(-1);
    expect(compared?.result.programPerYear.toNumber()).toBe(point.costPerYear);
  });
});

describe("a search", () => {
  it("of few programs finds what trying them all finds", () => {
    const document = readStudyText(ninemoss, "study.yaml");
    const plan = searchPlan(document, assumptions);
    const terms = [lakeTerms(drawnStudy(document, assumptions, draws).drawn(0, 0), plan.searched)];
    const search = searching(plan, terms);
    const all = plan.sets.flatMap(({ cells }, set) =>
      cells
        .reduce<number[][]>(
          (taken, { levels }) => taken.flatMap((each) => levels.map((_, level) => [...each, level])),
          [[]],
        )
        .map((levels): Placed => {
          const open = cells.map((cell, index) => cell.levels[levels[index] ?? 0]);
          const sum = (pick: "hours" | "met") =>
            open.reduce((total, level) => total + (level?.[pick] ?? 0), 0);
          return { set, taken: { levels, hours: sum("hours"), met: sum("met") } };
        }),
    );
    expect(all).toHaveLength(plan.programs);
    const tried = all.map((placed) => ({
      cost: search.of(placed).cost,
      chance: search.of(placed).chance,
      costPerYear: search.costPerYear(placed),
    }));
    const { answers, frontier } = programSearch(plan, terms);
    const best = answers.find(({ question }) => question === "best");
    const least = Math.min(...tried.map(({ cost }) => cost));
    expect(best?.point?.cost).toBeCloseTo(least, 6);
    expect(best?.bound).toBeLessThanOrEqual(least + 1e-6);
    for (const point of frontier)
      expect(
        tried.filter(
          ({ costPerYear, chance }) =>
            costPerYear < point.costPerYear - cent && chance < point.chance * (1 - 1e-9),
        ),
      ).toEqual([]);
  });

  it("with nothing to vary finds the option itself", () => {
    const result = searched(withSearch(sorrelBend, { vary: [] }));
    const requested = result.typed.find(({ mark }) => mark === "requested");
    expect(result.programs).toBe(1);
    expect(result.frontier.map(({ hoursShare }) => hoursShare)).toEqual([1]);
    expect(result.frontier[0]?.coverageShare).toBeCloseTo(1, 12);
    expect(result.frontier[0]?.cost).toBeCloseTo(requested?.cost ?? Number.NaN, 2);
    expect(result.frontier[0]?.chance).toBeCloseTo(requested?.chance ?? Number.NaN, 10);
    expect(result.answers.map(({ point }) => point?.id)).toEqual(
      result.answers.map(() => result.frontier[0]?.id),
    );
  });

  it("is never worse where it is wider", () => {
    const best = (search: object) =>
      searched(withSearch(ninemoss, search)).answers.find(({ question }) => question === "best")?.point
        ?.cost ?? Number.NaN;
    const [none, wash, all] = [best({ vary: [] }), best({ vary: ["wash"] }), best({})];
    expect(wash).toBeLessThanOrEqual(none);
    expect(all).toBeLessThanOrEqual(wash);
  });

  it("has a frontier that falls as it costs more, and a best program as good as every typed one with its measures", () => {
    const result = searched(sorrelBend);
    const { frontier, answers, typed } = result;
    for (const [index, point] of frontier.entries()) {
      const before = frontier[index - 1];
      if (!before) continue;
      expect(point.costPerYear).toBeGreaterThanOrEqual(before.costPerYear);
      expect(point.chance).toBeLessThan(before.chance);
    }
    const best = answers.find(({ question }) => question === "best");
    const stations = typed.filter(({ id }) => id === "weekends" || id === "full-season");
    for (const { cost } of stations) expect(best?.point?.cost).toBeLessThanOrEqual(cost);
    for (const { cost } of frontier) expect(best?.bound).toBeLessThanOrEqual(cost + cent);
    expect(stations.map(({ dominatedBy }) => dominatedBy === undefined)).toEqual([false, false]);
  });

  it("says which limit no program keeps, and the nearest that is kept", () => {
    const result = searched(withSearch(ninemoss, { chance: "0.000001 %", budget: "€10/yr" }));
    const answers = new Map(result.answers.map((answer) => [answer.question, answer]));
    expect(answers.get("under-chance")).toMatchObject({ point: undefined, binds: "chance" });
    expect(answers.get("within-budget")?.point).toBeUndefined();
    expect(answers.get("within-budget")?.nearest).toBeGreaterThan(10);
  });

  it("keeps the limits that a study states", () => {
    const result = searched(withSearch(sorrelBend, { budget: "$120,000/yr", staffHours: 3000 }));
    for (const { costPerYear, staffHours } of result.frontier) {
      expect(costPerYear).toBeLessThanOrEqual(120_000.01);
      expect(staffHours).toBeLessThanOrEqual(3000);
    }
  });

  it("begun later costs less of program and risks more", () => {
    const { timings, worthByYear } = searched(ninemoss);
    const later = timings.filter(({ what }) => what === "from");
    for (const [index, timing] of later.entries()) {
      const before = later[index - 1];
      if (!before) continue;
      expect(timing.program).toBeLessThan(before.program);
      expect(timing.chance).toBeGreaterThan(before.chance);
    }
    expect(worthByYear).toHaveLength(30);
  });
});
