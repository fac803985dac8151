import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { absent, editedText, exampleDocument, modelOf, placeIn, problemsIn, valueAt } from "./example.js";

const option = "options[full-season]";
const counted = { name: "Tows", count: 24, unitCost: "$180" };
const sticker = { name: "Sticker", countPerYear: 100, fee: "$10" };

const impossible: readonly Contradicting[] = [
  {
    why: "a yearly line with a lump and a count",
    edits: [[`${option}.yearly[0]`, { ...counted, cost: "$4,320/yr" }]],
    at: `${option}.yearly[0].cost`,
    found: "both cost and count",
    allowed: "exactly one of cost and count",
  },
  {
    why: "a yearly line without an amount",
    edits: [[`${option}.yearly[0]`, { name: "Tows" }]],
    at: `${option}.yearly[0].cost`,
    found: "neither cost nor count",
    allowed: "exactly one of cost and count",
  },
  {
    why: "a count without the price of one",
    edits: [[`${option}.yearly[0].unitCost`, absent]],
    at: `${option}.yearly[0].unitCost`,
    found: "nothing",
    allowed: "the price of one",
  },
  {
    why: "the price of one beside a lump",
    edits: [[`${option}.yearly[0]`, { name: "Tows", cost: "$4,320/yr", unitCost: "$180" }]],
    at: `${option}.yearly[0].unitCost`,
    found: "unitCost without count",
    allowed: "unitCost only beside count",
  },
  {
    why: "what is counted beside a lump",
    edits: [[`${option}.yearly[0]`, { name: "Tows", cost: "$4,320/yr", unit: "tow" }]],
    at: `${option}.yearly[0].unit`,
    found: "unit without count",
    allowed: "unit only beside count",
  },
  {
    why: "a fee of a vessel class that is not there",
    edits: [[`${option}.fees[0].vesselClass`, "submarines"]],
    found: '"submarines"',
    allowed: `an id from boats.classes: ${typed("boats.classes[0].id")}`,
  },
  {
    why: "more boats that pay than payments",
    edits: [[`${option}.fees[0].payers`, 4000]],
    found: "4,000 boats that make 3,250 payments a year",
    allowed: "at most as many boats as payments",
  },
  {
    why: "a fee above that at which the loss of demand is stated",
    edits: [[`${option}.fees[1].fee`, "$40.01"]],
    found: "$40.01, above $40, the highest fee for which demandLoss states the loss of demand (20 %)",
    allowed: "a fee of at most $40",
  },
  {
    why: "a loss of demand where there is no fee",
    edits: [[`${option}.fees`, []]],
    at: `${option}.demandLoss`,
    found: "a loss of demand of an option without fees",
    allowed: "only where there is a fee",
  },
  {
    why: "a program in force that is not there",
    edits: [["study.existingOption", "bridge"]],
    found: '"bridge"',
    allowed: "an option other than that requested: none, weekends",
  },
  {
    why: "a program in force that is the one requested",
    edits: [["study.existingOption", typed("study.requestedOption")]],
    found: "which is the option requested",
    allowed: "an option other than that requested: none, weekends",
  },
];

const malformed: ReadonlyArray<readonly [place: string, value: unknown, allowed: string]> = [
  [`${option}.staff[0].group`, "salaries", "one of wages, supervision, training"],
  [`${option}.staff[0].origin`, "", "a text that is not empty"],
  [`${option}.equipment[0].group`, "trucks", "hot-wash, vehicles, site-works"],
  [`${option}.equipment[0].yearlyCost`, "$1,500", "the unit after the stroke is missing"],
  [`${option}.equipment[0].yearlyCost`, "-$1,500/yr", "money per year such as"],
  [`${option}.equipment[0].origin`, "", "a text that is not empty"],
  [`${option}.yearly[0].group`, "fees", "one of wages"],
  [`${option}.yearly[0].count`, -1, "at least 0"],
  [`${option}.yearly[0].count`, 1e12, "at most 100,000,000"],
  [`${option}.yearly[0].count`, "24", "a number"],
  [`${option}.yearly[0].unitCost`, "180 tows", "an amount of money"],
  [`${option}.yearly[0].unit`, "", "a text that is not empty"],
  [`${option}.yearly[0].origin`, "", "a text that is not empty"],
  [`${option}.otherRevenue`, [{ name: "Grant", amount: "$5,000", origin: "invented" }], "after the stroke"],
  [`${option}.otherRevenue`, [{ name: "Grant", amount: "$5,000/yr" }], "a text"],
  [`${option}.fees[0].vesselClass`, "Season users", "lower-case letters"],
  [`${option}.fees[0].countPerYear`, -1, "at least 0"],
  [`${option}.fees[0].payers`, -1, "at least 0"],
  [`${option}.demandLoss.fee`, absent, "an amount of money"],
  [`${option}.demandLoss.loss`, "101 %", "a share of at most 100 %"],
  [`${option}.demandLoss.origin`, absent, "a text"],
  ["study.existingOption", "Weekend stations", "lower-case letters"],
];

describe("what a program costs", () => {
  it.each(impossible)("is refused for $why", expectContradiction);

  it.each(malformed)("is refused for %s of %j, told as %s", (place, value, allowed) => {
    const path = placeIn(exampleDocument(), place).text;
    const problems = problemsIn(editedText([[place, value]]));
    expect(problems).toContainEqual({
      path: expect.stringContaining(path),
      found: expect.any(String),
      allowed: expect.stringContaining(allowed),
      remedy: expect.stringMatching(/^[A-Z].*\.$/),
    });
  });

  it("is read with the least that an author must write, without groups", () => {
    const read = readStudyText(
      editedText([
        [`${option}.yearly`, [counted, { name: "Sundries", cost: "$900/yr" }]],
        [`${option}.fees`, [sticker]],
        [`${option}.otherRevenue`, absent],
        [`${option}.demandLoss`, absent],
        ["study.existingOption", absent],
      ]),
      "study.yaml",
    );
    const found = modelOf(read).options.find(({ id }) => id === "full-season");
    expect(found?.yearly).toEqual([
      { name: "Tows", count: 24, unitCost: 180 },
      { name: "Sundries", cost: 900 },
    ]);
    expect(found?.fees).toEqual([{ name: "Sticker", countPerYear: 100, fee: 10 }]);
    expect(found?.otherRevenue).toEqual([]);
    expect(read.study.existingOption).toBeUndefined();
  });

  it("may have the option without a program in force, and a fee at the highest that is stated", () => {
    const read = (edits: Parameters<typeof editedText>[0]) => readStudyText(editedText(edits), "study.yaml");
    expect(read([["study.existingOption", "none"]]).study.existingOption).toBe("none");
    const atLimit = valueAt(read([[`${option}.fees[1].fee`, "$40"]]), `${option}.fees[1].fee.value`);
    expect(atLimit).toBe(40);
  });

  it("tells what is wrong with a fee even where the boats cannot be read", () => {
    const problems = problemsIn(
      editedText([
        ["boats.classes", []],
        [`${option}.fees[0].payers`, 4000],
      ]),
    );
    expect(problems.map(({ allowed }) => allowed)).toEqual([
      "at least one vessel class",
      expect.stringContaining("at most as many boats as payments"),
    ]);
  });
});
