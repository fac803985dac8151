import { describe, expect, it } from "vitest";
import type { Sensitivity } from "../../../src/study/odds/odds.js";
import { typicalShareOf } from "../../../src/study/odds/typical-share.js";
import { plainWords } from "../../../src/study/reading/plain-words.js";
import { rangedQuantities } from "../../../src/study/reading/ranged.js";
import { replaceFirst } from "../../../src/study/short/replace-first.js";
import { isWithin, typicalPlacesIn } from "../../../src/study/short/typical-places.js";
import { typedQuantities } from "../../../src/study/typed/typed-quantities.js";
import { entries, studyFrom } from "./facts.js";

const { study } = studyFrom({ name: "Blue Lake", intakes: [{ use: "town", flow: "20 cfs" }] });
const conduit = "structures/intake-1/conduit";

const bar = (id: string, low: number, high: number, members?: readonly string[]) => ({
  ...{ id, name: id, low: { input: 0, netBenefit: low }, high: { input: 1, netBenefit: high } },
  ...(members ? { members } : {}),
});

const matters: Sensitivity = {
  netBenefit: 0,
  tornado: [
    bar("shell.growth-rate", -900, 900),
    bar(`${conduit}/length`, -300, 400),
    bar("boats/classes/infested-waters/fouled", -100, 100),
  ],
  ranks: [
    { id: "shell.growth-rate", name: "", correlation: 0.6 },
    { id: `${conduit}/length`, name: "", correlation: -0.3 },
    { id: `${conduit}/roughness`, name: "", correlation: 0.1 },
  ],
};

describe("typical values to replace first", () => {
  const rows = replaceFirst(study, matters, entries);

  it("are those with the widest bars, then those that follow by rank; an assumption of the model is none", () => {
    expect(rows.slice(0, 3).map(({ path }) => path.join("/"))).toEqual([
      "structures/0/conduit/length",
      "boats/classes/2/fouled",
      "structures/0/conduit/roughness",
    ]);
    // From -300 to 400
    expect(rows[0]?.moves).toBe(700);
    expect(rows[2]?.moves).toBeUndefined();
  });

  it("say where to find it, in the study's words", () => {
    expect(rows[0]?.name).toBe("Town water intake: length of the pipe");
    expect(rows[0]?.find).toBe("As-built drawings, or a map.");
  });
});

describe("the words for what to replace", () => {
  it.each([
    { intakes: [{ use: "town", tastes: "yes" }, { use: "irrigation" }], plant: {}, docks: {}, inForce: {} },
    { infestedSince: "2020", ramps: "1", plant: { power: "3" }, intakes: [{ use: "industry" }] },
    { hardness: "hard", nearestInfested: "8 h", ramps: "1", wanted: { gated: "yes", cost: "100000" } },
  ])("are there for each typical value that is drawn, whatever was said", (facts) => {
    const { study: made } = studyFrom(facts);
    const drawn = [
      ...rangedQuantities(made).map(({ path }) => path),
      ...typedQuantities(made, { entries }).map(({ members }) => members[0].path),
    ];
    const places = typicalPlacesIn(made, made.study.typical).filter(({ path }) =>
      drawn.some((each) => isWithin(each, path)),
    );
    expect(places.length).toBeGreaterThan(20);
    expect(places.filter(({ path }) => plainWords(path) === undefined)).toEqual([]);
  });
});

describe("the share of an answer that rests on typical values", () => {
  const input = (id: string, isTypical: boolean) => ({
    ...{ id, name: id, stage: "lake" as const, isTypical },
    distribution: { kind: "uniform" as const, low: 0, high: 1 },
  });
  const plan = {
    ...{ seed: 1, sampling: "latin-hypercube" as const },
    inputs: [input("model", false), input("jan", true), input("feb", true), input("own", true)],
    groups: [{ id: "months", name: "months", members: ["jan", "feb"], rankCorrelation: 0.95 }],
  };
  const ranks = ["model", "jan", "feb", "own"].map((id, index) => ({
    ...{ id, name: id },
    correlation: [0.6, 0.4, -0.5, 0.3][index] ?? 0,
  }));

  it("is that of squared rank correlations; months that move together count once, by the strongest", () => {
    // By hand: (0.5² + 0.3²)/(0.6² + 0.5² + 0.3²) = 0.34/0.70
    expect(typicalShareOf(plan, ranks)).toBeCloseTo(0.34 / 0.7, 12);
  });

  it("is not told of a study without typical values", () => {
    const own = { ...plan, inputs: plan.inputs.map((each) => ({ ...each, isTypical: false })) };
    expect(typicalShareOf(own, ranks)).toBeUndefined();
  });
});
