import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { absent, editedText, exampleDocument, problemsIn, valueAt } from "./example.js";

const example = exampleDocument();

const cases: readonly Contradicting[] = [
  {
    why: "an effect that is said to be exact",
    edits: [["options[full-season].steps.deterrence", "30 % exact"]],
    found: '"30 % exact"',
    allowed: "never known for certain",
  },
  {
    why: "a chance that is said to be exact",
    edits: [["boats.otherWays[0].chance", "0.05 %/yr exact"]],
    found: '"0.05 %/yr exact"',
    allowed: "never known for certain",
  },
  {
    why: "shares of vessel classes below 100 %",
    edits: [["boats.classes[0].share", "0 %"]],
    at: "boats.classes",
    found: "shares that add up to",
    allowed: "add up to 100 %",
  },
  {
    why: "shares of bearers below 100 %",
    edits: [["structures[0].bearer", { authority: "60 %", city: "39 %" }]],
    at: "structures[0].bearer",
    found: "shares that add up to 99 %",
    allowed: "add up to 100 %",
  },
  {
    why: "a share of a bearer that is not there",
    edits: [["structures[0].bearer", { authority: "60 %", county: "40 %" }]],
    at: "structures[0].bearer",
    found: '"county"',
    allowed: "an id from money.bearers",
  },
  {
    why: "an inflation without its origin",
    edits: [["money.inflation", "2 %/yr"]],
    at: "money.inflationOrigin",
    found: "nothing",
    allowed: "where the inflation comes from",
  },
  {
    why: "two vessel classes with one id",
    edits: [["boats.classes[1].id", typed("boats.classes[0].id")]],
    allowed: "an id used once",
  },
  {
    why: "a request for an option that is not there",
    edits: [["study.requestedOption", "bridge"]],
    found: '"bridge"',
    allowed: `an option with steps or schedule: ${typed("options[steps].id")}`,
  },
  {
    why: "a request for the option without a program",
    edits: [["study.requestedOption", typed("options[0].id")]],
    allowed: "an option with steps or schedule",
  },
  {
    why: "two options that do nothing",
    edits: [["options[steps].steps", absent]],
    at: "options",
    found: "2 options with neither steps nor schedule",
    allowed: "exactly one option with neither",
  },
  {
    why: "no option that does nothing",
    edits: [["options[0].steps", valueAt(example, "options[steps].steps")]],
    at: "options",
    found: "0 options with neither steps nor schedule",
    allowed: "exactly one option with neither",
  },
  {
    why: "two options with one id",
    edits: [["options[1].id", typed("options[0].id")]],
    allowed: "an id used once",
  },
  {
    why: "a program that nobody known pays for",
    edits: [["money.programBearer", "nobody"]],
    found: '"nobody"',
    allowed: `money.bearers: ${typed("money.bearers[0].id")}`,
  },
  {
    why: "seals of a class that there is not",
    edits: [["options[full-season].steps.seals[0].vesselClass", "canoes"]],
    found: '"canoes"',
    allowed: "an id from boats.classes",
  },
];

/** Seals name a class of the example. */
const noSeals = ["options[full-season].steps.seals", []] as const;

describe("a program", () => {
  it.each(cases)("is refused for $why", expectContradiction);

  const vesselClass = (id: string, share: string) => ({
    ...Object(valueAt(example, "boats.classes[0]")),
    id,
    name: id,
    share,
  });

  it.each([
    ["50 %", "50.1 %", "100.1 %"],
    ["33.3 %", "33.3 %", "66.6 %"],
  ])("is refused for shares of %s and %s, which make %s", (one, other, sum) => {
    const classes = [vesselClass("resident", one), vesselClass("visiting", other)];
    expect(problemsIn(editedText([["boats.classes", classes], noSeals]))).toMatchObject([
      {
        path: "boats.classes",
        found: `shares that add up to ${sum}: "resident" ${one}, "visiting" ${other}`,
      },
    ]);
  });

  it("may have shares whose sum differs from 100 % by the rounding of a computer alone", () => {
    // 0.1 + 0.2 + 0.7 is 0.9999999999999999 in binary arithmetic
    const classes = ["10 %", "20 %", "70 %"].map((share, index) => vesselClass(`class-${index}`, share));
    expect(
      readStudyText(editedText([["boats.classes", classes], noSeals]), "study.yaml").boats.classes,
    ).toHaveLength(3);
  });
});
