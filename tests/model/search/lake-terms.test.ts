import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import type { ProgramOption, StudyInput } from "../../../src/model/inputs.js";
import { evaluator } from "../../../src/model/search/evaluate.js";
import { lakeTerms, type SearchedProgram } from "../../../src/model/search/lake-terms.js";
import { type Variant, variantOf } from "../../../src/model/search/variant.js";
import { assumed } from "../assumptions.js";
import { boats, duties, fixedDock, noProgram, program, studyOf, wholeStudy } from "../study.js";

const horizon = 6;
const study = studyOf([duties, fixedDock], { money: { ...wholeStudy.money, horizon } });
/** The study and a future of it with more fouled boats. */
const lakeOf = (input: StudyInput) => {
  const worse = boats.classes.map((one) => ({ ...one, fouled: 2 * one.fouled }));
  const inputs = [input, { ...input, boats: { ...boats, classes: worse } }];
  return { input, source: assumed, futures: inputs.map((each) => ({ input: each, source: assumed })) };
};
const wash = { id: "no-wash", name: "No wash", leaves: [], withoutWash: true };
const radio = { id: "radio", name: "Radio", leaves: [], cost: 700, fees: 2, steps: { declaration: 0.9 } };
const searched: SearchedProgram = { base: 1, sets: [[], [wash], [radio]], lumpShare: 0.4 };
const withOption = (option: ProgramOption): StudyInput => ({
  ...study,
  options: [...study.options, { ...option, id: "found" }],
});

describe("the terms of a lake", () => {
  const terms = lakeTerms(lakeOf(study), searched);
  const search = evaluator([terms]);

  const full: ProgramOption["rampUp"] = [];
  it.each<[string, Pick<Variant, "hours" | "coverage">, number, ProgramOption["rampUp"]]>([
    ["with all as in the option", { hours: 1, coverage: { times: 1 } }, 0, full],
    ["with half of the hours", { hours: 0.5, coverage: { times: 0.5 } }, 0, full],
    ["without the wash, growing", { hours: 1.5, coverage: { of: 0.95 } }, 1, [{ reach: 0.4, cost: 0.6 }]],
    ["with another measure", { hours: 0.25, coverage: { of: 0.3 } }, 2, full],
  ])("make of a program, %s, what the option costs and risks that it becomes", (_, opened, set, rampUp) => {
    const years = Array.from({ length: horizon }, (_, year) => rampUp[year] ?? { reach: 1, cost: 1 });
    const measures = at(searched.sets, set);
    const option = variantOf(program, { ...opened, measures, lumpShare: 0.4, rampUp });
    const expected = lakeTerms(lakeOf(withOption(option)), { ...searched, sets: [] }).typed.at(-1);
    const found = search.of({ set, ...opened, years });
    // Lines of an option are rounded to a cent, of which each year has a few.
    expect(Math.abs(found.cost - (expected?.cost ?? Number.NaN))).toBeLessThan(0.1);
    expect(Math.abs(found.program - (expected?.program ?? Number.NaN))).toBeLessThan(0.1);
    expect(found.chance).toBeCloseTo(expected?.chance ?? Number.NaN, 12);
  });

  it("tell of the study's own options what they cost, without one for the search", () => {
    expect(terms.typed).toHaveLength(2);
    const [none, stations] = terms.typed;
    expect(none?.chance).toBeGreaterThan(stations?.chance ?? Number.NaN);
    expect(terms.programs.map(({ coverage }) => coverage)).toEqual([0.9, 0.9, 0.9]);
    const alone = lakeTerms(lakeOf(study), { ...searched, sets: [] });
    expect(alone).toMatchObject({ typed: terms.typed, programs: [], futures: [] });
  });

  it("tell last what the searched levels cost, followed by the option without a program", () => {
    const drawdown = [
      { dayOfYear: 0, elevation: 85 },
      { dayOfYear: 60, elevation: 85 },
      { dayOfYear: 90, elevation: 100 },
    ];
    const schedule = { id: "deep", name: "Deep", drawdown };
    const { typed } = lakeTerms(lakeOf(study), { ...searched, sets: [], schedule });
    const written = lakeTerms(
      lakeOf({
        ...withOption({ ...noProgram, schedule: "deep" }),
        lake: { ...study.lake, otherSchedules: [schedule] },
      }),
      { ...searched, sets: [] },
    ).typed;
    expect(typed).toHaveLength(3);
    expect(typed).toEqual(written);
    expect(typed[2]?.cost).not.toBe(typed[0]?.cost);
  });
});
