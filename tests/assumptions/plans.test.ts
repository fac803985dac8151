import { describe, expect, it } from "vitest";
import { readPlans } from "../../src/assumptions/plans.js";
import { partKinds } from "../../src/model/structures/catalogue.js";
import { realSet } from "./real.js";

const { entries, plans } = realSet();

const coating = {
  id: "new-coating",
  name: "new coating",
  measure: "coating",
  parts: ["hull"],
  numbers: "foul-release",
  intervals: [0, 12],
  sideEffects: "None known.",
  permits: "None.",
  cautions: "Ventilate.",
};

function problemsWith(changes: object): string[] {
  const problems: string[] = [];
  readPlans([{ ...coating, ...changes }], entries, problems);
  return problems;
}

describe("the catalogue of protection plans", () => {
  it("takes another coating as one more entry", () => {
    const problems: string[] = [];
    expect(readPlans([coating], entries, problems)).toEqual([coating]);
    expect(problems).toEqual([]);
  });

  it.each([
    ["an unknown measure", { measure: "sorcery" }, ["entry 1, measure", "Correct it."]],
    ["an unknown part", { parts: ["roof"] }, ["entry 1, parts"]],
    ["no cautions", { cautions: "" }, ["entry 1, cautions"]],
    ["an interval of a negative time", { intervals: [-1] }, ["entry 1, intervals"]],
    ["an unknown key", { colour: "red" }, ["colour"]],
    [
      "numbers that no file holds",
      { numbers: "gold-leaf" },
      ["new-coating", "plan.gold-leaf.capital", "Add it to plans.yaml."],
    ],
  ])("is refused for %s, by entry and remedy", (_, changes, words) => {
    const text = problemsWith(changes).join("\n");
    for (const word of ["protection-plans.yaml", ...words]) expect(text).toContain(word);
  });

  it("is refused if an id stands twice", () => {
    const problems: string[] = [];
    readPlans([coating, coating], entries, problems);
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
