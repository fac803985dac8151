import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { editedText, exampleDocument, problemsIn, valueAt } from "./example.js";

const example = exampleDocument();
const listAt = (place: string): readonly unknown[] => Object(valueAt(example, place));
/** A list of the example with one of its items once more at its end. */
const again = (place: string, index = 0) => [...listAt(place), listAt(place)[index]];

const pin = (part: string, plan: string) => ({ part, plan, reason: "contract in force" });
const seal = { vesselClass: "never-left", share: "50 %" };
const intake = "structures[intake]";
const asked = "options[full-season]";
const text = { section: "board", text: "The same words." };
const revenue = { name: "State grant", amount: "$4,000/yr", origin: "invented" };

const cases: readonly Contradicting[] = [
  {
    why: "a part that is prescribed two plans",
    edits: [
      [
        `${intake}.pinned`,
        [pin("trash rack", "divers-6"), pin("conduit", "leave"), pin("trash rack", "leave")],
      ],
    ],
    at: `${intake}.pinned[2].part`,
    found: '"trash rack" a second time, first in pinned[0]',
    allowed: "one plan for each part",
  },
  {
    why: "a class with two shares of seals",
    edits: [[`${asked}.steps.seals`, [seal, { ...seal, share: "90 %" }]]],
    at: `${asked}.steps.seals[1].vesselClass`,
    found: '"never-left" a second time, first in seals[0]',
    allowed: "each class once",
  },
  {
    why: "a class with steps of its own twice",
    edits: [
      [
        `${asked}.steps.byClass`,
        [
          { vesselClass: "never-left", hotWash: "10 %" },
          { vesselClass: "never-left", hotWash: "20 %" },
        ],
      ],
    ],
    at: `${asked}.steps.byClass[1].vesselClass`,
    found: '"never-left" a second time, first in byClass[0]',
    allowed: "each class once",
  },
  ...(["staff", "equipment", "yearly", "fees"] as const).map((list) => ({
    why: `a line of ${list} that is there twice`,
    edits: [[`${asked}.${list}`, again(`${asked}.${list}`)]] as const,
    at: `${asked}.${list}[${listAt(`${asked}.${list}`).length}]`,
    found: `a second time, first in ${list}[0]`,
    allowed: "each line once",
  })),
  {
    why: "a grant that is there twice",
    edits: [[`${asked}.otherRevenue`, [revenue, revenue]]],
    at: `${asked}.otherRevenue[1]`,
    found: 'the whole line "State grant" a second time, first in otherRevenue[0]',
    allowed: "each line once",
  },
  {
    why: "fixtures that are there twice",
    edits: [[`${intake}.fixtures`, again(`${intake}.fixtures`)]],
    at: `${intake}.fixtures[${listAt(`${intake}.fixtures`).length}]`,
    found: "a second time, first in fixtures[0]",
    allowed: "each line once",
  },
  {
    why: "a duty that is there twice",
    edits: [["structures[lake-wide].items", again("structures[lake-wide].items")]],
    at: `structures[lake-wide].items[${listAt("structures[lake-wide].items").length}]`,
    found: "a second time, first in items[0]",
    allowed: "each line once",
  },
  ...["boats.classes", "boats.sites", "options", "money.bearers", "boats.traffic.dayTypes"].map((list) => ({
    why: `two of ${list} with one name`,
    edits: [[`${list}[1].name`, typed(`${list}[0].name`).toUpperCase()]] as const,
    found: "a second time, first in",
    allowed: "a name used once",
  })),
  {
    why: "two other rates that are one",
    edits: [["money.otherDiscountRates", ["5 %/yr", "5.0 %/yr"]]],
    at: "money.otherDiscountRates[1]",
    found: "5.0 %/yr a second time",
    allowed: "two rates that differ",
  },
  {
    why: "another rate that is the study's own",
    edits: [["money.otherDiscountRates", [typed("money.discountRate"), "7 %/yr"]]],
    at: "money.otherDiscountRates[0]",
    allowed: "a rate other than money.discountRate",
  },
  {
    why: "a section that is left out twice",
    edits: [["report", { leaveOut: ["worked", "drying", "worked"] }]],
    at: "report.leaveOut[2]",
    found: '"worked" a second time, first in leaveOut[0]',
    allowed: "each section once",
  },
  {
    why: "a text that stands in its section twice",
    edits: [["report", { texts: [text, text] }]],
    at: "report.texts[1]",
    found: 'the same text in "board" a second time, first in texts[0]',
    allowed: "each text once in a section",
  },
];

describe("what stands in a list twice", () => {
  it.each(cases)("is refused: $why", expectContradiction);

  it("is told by its index where it has no field of its own", () => {
    const [problem] = problemsIn(editedText([[`${asked}.staff`, again(`${asked}.staff`)]]));
    expect(problem?.path).toMatch(/\.staff\[\d+\]$/);
  });

  it.each([
    ["lines that share a name", `${asked}.otherRevenue`, [revenue, { ...revenue, amount: "$5,000/yr" }]],
    ["plans of two parts", `${intake}.pinned`, [pin("trash rack", "divers-6"), pin("conduit", "divers-6")]],
    ["two texts of one section", "report", { texts: [text, { ...text, text: "Other words." }] }],
  ])("may be two things: %s", (_, place, value) => {
    expect(() => readStudyText(editedText([[place, value]]), "study.yaml")).not.toThrow();
  });
});
