import { describe, expect, it } from "vitest";
import { readPlans } from "../../src/assumptions/plans.js";
import { partKinds } from "../../src/model/structures/catalogue.js";
import { heldIds, realSet } from "./real.js";

const { plans } = realSet();

const numbers = {
  capital: "plan.gold-leaf.capital",
  referenceSize: "plan.gold-leaf.reference-size",
  sizeExponent: "plan.gold-leaf.size-exponent",
  life: "plan.gold-leaf.life",
  upkeep: "plan.gold-leaf.upkeep",
  outageDays: "plan.gold-leaf.outage-days",
  settlementFactor: "plan.gold-leaf.settlement-factor",
  cleaningShare: "plan.gold-leaf.cleaning-share",
};
const held = heldIds(Object.values(numbers));
const coating = {
  id: "new-coating",
  name: "new coating",
  measure: "coating",
  parts: ["hull"],
  numbers,
  intervals: [0, 12],
  sideEffects: "None known.",
  permits: "None.",
  cautions: "Ventilate.",
};

function problemsWith(changes: object): string[] {
  const problems: string[] = [];
  readPlans([{ ...coating, ...changes }], held, problems);
  return problems;
}

describe("the catalogue of protection plans", () => {
  it("takes another coating as one more entry", () => {
    const problems: string[] = [];
    expect(readPlans([coating], held, problems).plans).toEqual([coating]);
    expect(problems).toEqual([]);
  });

  it("takes the numbers of an entry of an earlier version by the words of their ids", () => {
    const problems: string[] = [];
    expect(readPlans([{ ...coating, numbers: "gold-leaf" }], held, problems).plans).toEqual([coating]);
    const more = heldIds([...Object.values(numbers), "plan.gold-leaf.hours", "plan.gold-leaf.capital.other"]);
    expect(readPlans([{ ...coating, numbers: "gold-leaf" }], more, problems).plans).toEqual([coating]);
    const { numbers: _, ...named } = { ...coating, id: "gold-leaf" };
    expect(readPlans([named], held, problems).plans).toEqual([{ ...coating, id: "gold-leaf" }]);
    expect(problems).toEqual([]);
  });

  it("holds each number to the unit that it needs as what it is to the plan", () => {
    const read = readPlans([coating], held, []).numbers;
    expect(read.map(({ id, unit }) => [id, unit])).toEqual([
      ["plan.gold-leaf.capital", "$/m2"],
      ["plan.gold-leaf.reference-size", "m2"],
      ["plan.gold-leaf.size-exponent", "1"],
      ["plan.gold-leaf.life", "yr"],
      ["plan.gold-leaf.upkeep", "1/yr"],
      ["plan.gold-leaf.outage-days", "d"],
      ["plan.gold-leaf.settlement-factor", "share"],
      ["plan.gold-leaf.cleaning-share", "share"],
    ]);
  });

  it.each([
    ["an unknown measure", { measure: "sorcery" }, ["entry 1, measure", "Correct it."]],
    ["an unknown part", { parts: ["roof"] }, ["entry 1, parts"]],
    ["no cautions", { cautions: "" }, ["entry 1, cautions"]],
    ["an interval of a negative time", { intervals: [-1] }, ["entry 1, intervals"]],
    ["months that do not divide a year", { intervals: [9] }, ["entry 1, intervals, 1", "divide a year"]],
    ["years that are not whole", { intervals: [0, 18] }, ["entry 1, intervals, 2", "whole years"]],
    ["an unknown key", { colour: "red" }, ["colour"]],
    [
      "a number that no file holds",
      { numbers: { ...numbers, capital: "plan.tin.capital" } },
      ["new-coating names plan.tin.capital as its capital", "Add it to plans.yaml, in $/m2."],
    ],
    [
      "a number that is not named",
      { numbers: Object.fromEntries(Object.entries(numbers).filter(([name]) => name !== "outageDays")) },
      ["new-coating names no outage days", "an assumption in d", "Add outageDays to its numbers."],
    ],
    [
      "a number that its measure does not read",
      { numbers: { ...numbers, colour: "plan.gold-leaf.capital" } },
      ['new-coating has the number "colour"', "allowed for the measure coating: capital", "remove it"],
    ],
    [
      "numbers of an earlier version that no file holds",
      { numbers: "tin" },
      ["new-coating names no capital", "an assumption in $/m2"],
    ],
  ])("is refused for %s, by entry and remedy", (_, changes, words) => {
    const text = problemsWith(changes).join("\n");
    for (const word of ["protection-plans.yaml", ...words]) expect(text).toContain(word);
  });

  it("is refused if an id stands twice", () => {
    const problems: string[] = [];
    readPlans([coating, coating], held, problems);
    expect(problems).toEqual([expect.stringContaining("new-coating stands here a second time")]);
  });

  it("offers every kind of part to be left alone and to be cleaned by the month", () => {
    for (const part of partKinds) {
      const offered = plans.filter(({ parts }) => parts.includes(part));
      expect(offered.map(({ measure }) => measure)).toContain("leave");
      expect(offered.find(({ measure }) => measure === "clean")?.intervals).toContain(1);
    }
  });

  it.each([
    ["divers", /diving/i],
    ["divers", /razor-sharp/],
    ["dry", /confined space/],
    ["dry", /stored energy/],
    ["dry", /no faster than its dam's operating rules/],
    ["oxidant-season", /chlorine/i],
    ["copper-paint", /label/],
    ["heat", /scalding/i],
  ])("cautions where the work of %s can hurt: %s", (id, words) => {
    expect(plans.find((plan) => plan.id === id)?.cautions).toMatch(words);
  });
});
