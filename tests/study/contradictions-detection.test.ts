import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction } from "./contradicting.js";
import { editedText, exampleDocument, modelOf, problemsIn, valueAt } from "./example.js";

const optionCount = (() => {
  const options = valueAt(exampleDocument(), "options");
  if (!Array.isArray(options)) throw new Error("the example holds no options");
  return options.length;
})();

const tows = { planktonTows: 24, origin: "invented" };
const everywhere = (monitoring: object) =>
  Array.from({ length: optionCount }, (_, index) => [`options[${index}].monitoring`, monitoring] as const);

const treatment = {
  name: "Treatment of a bay",
  cost: "$1,500,000",
  chance: "15 %",
  latestYear: 2,
  origin: "invented",
};

const cases: readonly Contradicting[] = [
  {
    why: "chances beside numbers of samples",
    edits: everywhere({ ...tows, noticedWithin: ["50 %"] }),
    at: "options[0].monitoring.noticedWithin",
    found: "chances beside planktonTows",
    allowed: "chances or numbers of samples, not both",
  },
  {
    why: "chances to have noticed that fall",
    edits: everywhere({ noticedWithin: ["50 %", "40 %"], origin: "invented" }),
    at: "options[0].monitoring.noticedWithin[1]",
    found: "40 %",
    allowed: "at least the chance by the year before, 50 %",
  },
  {
    why: "an option that does not say how it watches while others do",
    edits: everywhere(tows).slice(1),
    at: "options[0].monitoring",
    found: "nothing, while other options say",
    allowed: "in every option or in none",
  },
  {
    why: "watching in a lake that is infested",
    edits: [...everywhere(tows), ["lake.infestedSince", 2024]],
    at: "options[0].monitoring",
    found: "monitoring in a lake infested since 2024",
    allowed: "known already",
  },
  {
    why: "a response in a lake that is infested",
    edits: [
      ["options[1].response", treatment],
      ["lake.infestedSince", 2024],
    ],
    found: "response in a lake infested since 2024",
    allowed: "known already",
  },
  {
    why: "a response that nobody known pays for",
    edits: [["options[1].response", { ...treatment, bearer: "nobody" }]],
    at: "options[1].response.bearer",
    found: '"nobody"',
    allowed: "an id from money.bearers",
  },
  {
    why: "a response whose bearers pay too little together",
    edits: [["options[1].response", { ...treatment, bearer: { city: "50 %", authority: "40 %" } }]],
    at: "options[1].response.bearer",
    found: "shares that add up to 90 %",
    allowed: "add up to 100 %",
  },
];

/** A field out of its bounds, with what the message says is allowed. */
const fields: ReadonlyArray<readonly [why: string, field: string, value: unknown, allowed: string]> = [
  ["a negative number of tows", "monitoring.planktonTows", -1, "at least 0 plankton tows a year"],
  ["half a plate", "monitoring.settlementPlates", 0.5, "a whole number of settlement plates"],
  ["chances of no year", "monitoring.noticedWithin", [], "the chance of at least one year"],
  ["a chance of notice above 100 %", "monitoring.noticedWithin", ["120 %"], "1"],
  ["a chance of success above 100 %", "response.chance", "120 %", "1"],
  ["a negative cost", "response.cost", "$-5", "0"],
  ["a cost without a currency", "response.cost", "12 ft", "money"],
  ["a last year before the first", "response.latestYear", 0, "at least 1"],
  ["a response of unknown source", "response.origin", "", "a text that is not empty"],
];

describe("watching for mussels and a response", () => {
  it.each(cases)("are refused for $why", expectContradiction);

  it.each(fields)("are refused for %s", (_why, field, value, allowed) => {
    const [group = "", key = ""] = field.split(".");
    const base = group === "monitoring" ? tows : treatment;
    const text = editedText([[`options[1].${group}`, { ...base, [key]: value }]]);
    const problem = problemsIn(text).find(({ path }) => path.includes(`${group}.${key}`));
    expect(problem?.allowed).toContain(allowed);
  });

  it("reach the model as entered: counts, chances, and the response", () => {
    const text = editedText([
      ...everywhere(tows),
      ["options[1].monitoring", { noticedWithin: ["50 %", "0.75"], origin: "invented" }],
      ["options[1].response", treatment],
    ]);
    const [first, second] = modelOf(readStudyText(text, "study.yaml")).options;
    expect(first?.monitoring?.planktonTows).toBe(24);
    expect(second?.monitoring?.noticedWithin).toEqual([0.5, 0.75]);
    expect(second?.response).toMatchObject({ cost: 1_500_000, chance: 0.15, latestYear: 2 });
  });

  it("may be a response alone: mussels are then noticed at once", () => {
    const text = editedText([["options[1].response", treatment]]);
    expect(readStudyText(text, "study.yaml").options[1]?.response?.latestYear).toBe(2);
  });

  it("may be an origin alone: mussels are then noticed by the first harm", () => {
    const text = editedText([...everywhere(tows), ["options[0].monitoring", { origin: "nobody watches" }]]);
    expect(readStudyText(text, "study.yaml").options[0]?.monitoring?.origin).toBe("nobody watches");
  });
});
