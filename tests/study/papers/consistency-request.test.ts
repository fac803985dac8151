import { describe, expect, it } from "vitest";
import { editedRun } from "../../report/edited.js";
import { type Contradicting, expectContradiction } from "../contradicting.js";
import { editedText, inputErrorOf, problemsIn } from "../example.js";

const source = { name: "State grant", share: "40 %", origin: "invented" };
const asking = (...sources: readonly object[]): Contradicting["edits"] => [["report", { ask: { sources } }]];
const first = "report.ask.sources[0]";

const cases: readonly Contradicting[] = [
  {
    why: "a grant that ends before it starts",
    edits: asking({ ...source, from: 2030, to: 2028 }),
    at: `${first}.to`,
    found: "ends with FY 2028, before it starts with FY 2030",
    allowed: "a fiscal year from 2030",
  },
  {
    why: "a share that leaves less than its match",
    edits: asking({ ...source, share: "80 %", match: "25 %" }),
    at: `${first}.share`,
    found: "80 % beside a match of 25 %",
    allowed: "at most 100 %",
  },
  {
    why: "shares of one cost above 100 %",
    edits: asking(source, { ...source, name: "Partner", share: "70 %" }),
    at: "report.ask.sources[1].share",
    found: "110 % of the same cost together with “State grant”",
    allowed: "at most 100 % in each fiscal year",
  },
  {
    why: "neither a share nor an amount",
    edits: asking({ name: "Grant", origin: "invented" }),
    at: `${first}.share`,
    found: "neither share nor amount",
    allowed: "exactly one of share and amount",
  },
  {
    why: "a payer that is not there",
    edits: asking({ ...source, payer: "county" }),
    at: `${first}.payer`,
    found: '"county"',
    allowed: "an id from money.bearers",
  },
  {
    why: "more leave than hours",
    edits: [["options[full-season].staff[0].leaveHours", 6000]],
    found: "6,000 hours of leave",
    allowed: "at most the hours paid, 4,300",
  },
  {
    why: "a cost of starting that is paid again",
    edits: [["options[full-season].equipment[0].oneTime", true]],
    at: "options[full-season].equipment[0].life",
    found: "lasts 8 years of 30",
    allowed: "at least the years of the study, 30",
  },
];

describe("a request that cannot be", () => {
  it.each(cases)("is told at its place: $why", expectContradiction);

  it("is told of a grant that pays more than the cost", () => {
    const grant = { name: "Grant", amount: "$900,000", paysFor: ["ongoing"], origin: "invented" };
    expect(
      inputErrorOf(() => editedRun([["report", { ask: { sources: [grant] } }]])).problems,
    ).toContainEqual({
      path: "report.ask.sources[0].amount",
      at: ["report", "ask", "sources", 0, "amount"],
      found: "$900,000, more than what it may pay for in FY 2027",
      allowed: expect.stringContaining("at most that year's cost, "),
      remedy: "Lower the amount or give a cap, or let it end before that year.",
    });
  });

  it("is told of a budget that comes to no amount of money, before a report asks for it", () => {
    const many = [
      ["options[full-season].equipment[0].price", "$8,000,000,000"],
      ["options[full-season].equipment[0].count", 20_000],
    ] as const;
    expect(inputErrorOf(() => editedRun(many)).problems).toContainEqual({
      path: expect.stringMatching(/^options\[\d+ "full-season"\]$/),
      at: ["options", expect.any(Number)],
      found: expect.stringMatching(/^the budget line .*: \d+.* is no amount of money$/),
      allowed: "amounts of up to 90,000,000,000,000",
      remedy: expect.stringContaining("too large by far"),
    });
  });

  it("is told of inflation by which a source would pay no amount of money at the end of the horizon", () => {
    const dear = [
      ["options[full-season].equipment[0].price", "$9,000,000,000"],
      ["options[full-season].equipment[0].count", 100],
      ["money.inflation", "25 %/yr"],
      ["money.inflationOrigin", "invented"],
    ] as const;
    expect(
      editedRun([...dear, ["report", { ask: {} }]]).comparison.options.map(
        ({ budget }) => budget?.years.length,
      ),
    ).toContain(5);
    expect(inputErrorOf(() => editedRun([...dear, ...asking(source)])).problems[0]?.found).toMatch(
      /^the budget line .* is no amount of money$/,
    );
  });

  it.each([
    [
      "a contingency at certainty",
      { contingency: { confidence: "100 %" } },
      "contingency.confidence",
      "below 100 %",
    ],
    [
      "an appropriation of ten years",
      { appropriationYears: 10 },
      "appropriationYears",
      "at most 5 fiscal years",
    ],
    ["more than is left", { carriedIn: "$-5" }, "carriedIn", "at least 0"],
    ["a fund with a control character", { fund: "Fund\u00074" }, "fund", "characters that can be printed"],
  ])("is refused as malformed: %s", (_why, ask, place, allowed) => {
    expect(problemsIn(editedText([["report", { ask }]]))).toContainEqual({
      path: `report.ask.${place}`,
      found: expect.any(String),
      allowed: expect.stringContaining(allowed),
      remedy: expect.stringMatching(/^[A-Z].*\.$/),
    });
  });
});
