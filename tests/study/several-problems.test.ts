import { describe, expect, it } from "vitest";
import { InputError, sentence } from "../../src/study/reading/problems.js";
import { readStudyText } from "../../src/study/reading/read.js";
import {
  absent,
  editedText,
  exampleDocument,
  inputErrorOf,
  placeIn,
  problemsIn,
  wordsOfTheProgram,
} from "./example.js";

/** Three fields that are not well formed and three contradictions, each in another part of the study. */
const mistakes = [
  ["study.name", absent],
  ["structures[intake].rack.width", "5 kg"],
  ["colour", "blue"],
  ["lake.minimumElevation", "9,000 ft"],
  ["structures[ramp].bottomElevation", "9,000 ft"],
  ["money.programBearer", "nobody"],
] as const;

describe("a study with several mistakes", () => {
  it("is told of all of them at once, in fields and between fields", () => {
    const places = problemsIn(editedText(mistakes)).map(({ path }) => path);
    const document = exampleDocument();
    expect(places).toEqual(expect.arrayContaining(mistakes.map(([place]) => placeIn(document, place).text)));
  });

  it("is told how many there are, one a line, under the name of its file", () => {
    const error = inputErrorOf(() => readStudyText(editedText(mistakes), "north-lake.yaml"));
    const [head, ...lines] = error.message.split("\n");
    expect(head).toBe(`north-lake.yaml: ${error.problems.length} problems.`);
    expect(lines.map((line) => line.trim())).toEqual(error.problems.map(sentence));
    expect(wordsOfTheProgram(error.message)).toBeUndefined();
  });

  it("is told of contradictions only where the fields behind them are sound", () => {
    const problems = problemsIn(
      editedText([
        ["lake.maximumElevation", "tall"],
        ["lake.minimumElevation", "9,000 ft"],
        ["structures[intake].elevation", "9,000 ft"],
      ]),
    );
    expect(problems.map(({ path }) => path)).toEqual(["lake.maximumElevation"]);
  });

  it("is told of contradictions among sound structures beside a broken one, by their own index", () => {
    const problems = problemsIn(
      editedText([
        ["structures[0].kind", "canal"],
        ["structures[ramp].bottomElevation", "9,000 ft"],
      ]),
    );
    const document = exampleDocument();
    expect(problems.map(({ path }) => path)).toEqual([
      placeIn(document, "structures[0].kind").text,
      placeIn(document, "structures[ramp].bottomElevation").text,
    ]);
  });

  it("is told of every missing section of an empty group", () => {
    expect(problemsIn("{}").map(({ path }) => path)).toEqual([
      "study",
      "lake",
      "structures",
      "boats",
      "options",
      "money",
    ]);
  });
});

describe("the message of a problem", () => {
  const problem = { path: "lake.name", found: "nothing", allowed: "a text", remedy: "Add it." };

  it("names place, found, allowed and remedy, in that order", () => {
    expect(sentence(problem)).toBe("lake.name: found nothing; allowed: a text. Add it.");
  });

  it("counts a single problem as one", () => {
    expect(new InputError("study.yaml", [problem]).message).toMatch(/^study\.yaml: 1 problem\.\n/);
  });

  it("shortens what was found to a readable length", () => {
    const [told] = problemsIn(editedText([["lake.species", "mussel ".repeat(1000)]]));
    expect(told?.found.length).toBeLessThan(80);
    expect(told?.found).toMatch(/…$/);
  });

  it("shortens an id beside an index as well", () => {
    const [told] = problemsIn(editedText([["structures[intake].id", "x".repeat(5000)]]));
    expect(told?.path.length).toBeLessThan(100);
  });
});
