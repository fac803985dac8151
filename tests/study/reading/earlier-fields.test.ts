import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { foundingChances } from "../../../src/model/program/founding-chances.js";
import { studyNotes } from "../../../src/study/checks/study-notes.js";
import { inputDifferences } from "../../../src/study/compared/input-differences.js";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { inTodaysTerms } from "../../../src/study/reading/earlier-fields.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { realSet } from "../../assumptions/real.js";
import { absent, editedText, problemsIn, put } from "../example.js";

// Sorrel Bend as an earlier version had it: launches with live mussels by class, counts with the share alive, and one
// yearly chance of all other ways in.
const file = fileURLToPath(new URL("./earlier/live-mussels-by-class.yaml", import.meta.url));
const kept = readFileSync(file, "utf8");
const retired = "arrival.establishment-per-fouled-launch";

type Edit = readonly [place: string, value: unknown];

function changedText(...edits: readonly Edit[]): string {
  const document: unknown = parse(kept);
  for (const [place, value] of edits) put(document, place, value);
  return stringify(document, { aliasDuplicateObjects: false });
}
const opened = (...edits: readonly Edit[]) => readStudyText(changedText(...edits), "lake.yaml");

describe("a study of an earlier version", () => {
  const study = readStudyText(kept, "lake.yaml");
  const classOf = (id: string) => study.boats.classes.find((each) => each.id === id);

  it("opens with a share of launches with live mussels as one of fouled boats that all have them", () => {
    expect(classOf("long-moored")?.fouled).toMatchObject({ value: 0.14, text: "14 %" });
    expect(classOf("long-moored")?.living?.value).toBe(1);
    expect(classOf("never-left")?.fouled).toMatchObject({ value: 0 });
  });

  it("opens with its counts of fouled boats, and the share alive beside them", () => {
    const { fouled, living } = classOf("infested-30-days") ?? {};
    expect(fouled).toMatchObject({ found: 25, of: 830, weight: { value: 0.5 } });
    expect(fouled).not.toHaveProperty("live");
    expect(living?.text).toBe("100 %");
  });

  it("opens with its other pathways as one way in of the same chance, that no check stops", () => {
    expect(study.boats.otherWays).toMatchObject([
      { name: "Ways that no boat check stops", chance: { value: 0.0015, text: "0.15 %/yr" }, checked: false },
    ]);
  });

  it("tells its author what became of each field", () => {
    const notes = studyNotes(study, realSet());
    // Five classes, each with carriesLive, the pathways, and the loss of demand.
    expect(notes.map(({ path }) => path)).toEqual(
      [0, 1, 2, 3, 4, 5, 6].map((index) => `study.fromEarlier[${index}]`),
    );
    expect(notes[2]?.found).toMatch(
      /^boats\.classes\[2\]: carriesLive, launches with live mussels, is now fouled/,
    );
    expect(notes[5]?.found).toContain("boats.otherPathways");
    expect(notes[6]?.found).toContain(
      "demandLoss is now the loss at its fee, of which lower fees lose as much less",
    );
    expect(notes.every(({ unusual, remedy }) => unusual && remedy.length > 0)).toBe(true);
  });

  it("has for each of its launches the chance of one with living mussels", () => {
    // That of a fouled launch of unknown origin over the share living that is typical of it; none is fouled of those
    // that never left.
    const { input, assumed } = prepareStudy(study, realSet());
    const ofLiving = assumed("arrival.founding-unknown") / assumed("arrival.living-share-unknown");
    const [never, ...others] = foundingChances(input.boats, assumed);
    expect(never).toBe(0);
    expect(others).toHaveLength(4);
    for (const each of others) expect(each).toBeCloseTo(ofLiving, 14);
  });

  it("moves no figure by the lines that tell of it, and tells nothing once these are removed", () => {
    const { fromEarlier, ...about } = study.study;
    expect(fromEarlier).toHaveLength(7);
    const checked = { ...study, study: { ...about, fromEarlier: [] } };
    expect(studyNotes(checked, realSet())).toEqual([]);
    const differences = inputDifferences(study, checked);
    expect(differences.map(({ place, movesFigures }) => [place, movesFigures])).toEqual([
      ["study/fromEarlier", false],
    ]);
  });

  it("is the same object where nothing changed its meaning, and in today's terms the second time", () => {
    const today: unknown = inTodaysTerms(parse(kept));
    expect(inTodaysTerms(today)).toBe(today);
    for (const other of [null, "text", [1], { boats: 3 }, { boats: { classes: "none" } }])
      expect(inTodaysTerms(other)).toBe(other);
  });
});

describe("fields of an earlier version", () => {
  it("keep a plan prescribed for a dock's part by the name that the part had, and tell the new one", () => {
    const pinned = [{ part: "wetted hull", plan: "divers-12", reason: "contract" }];
    const { structures, study } = readStudyText(
      editedText([["structures[dock].pinned", pinned]]),
      "lake.yaml",
    );
    const dock = structures.findIndex(({ kind }) => kind === "dock");
    expect(structures[dock]?.pinned).toEqual([{ ...pinned[0], part: "wetted surface" }]);
    expect(study.fromEarlier).toEqual([
      `structures[${dock}].pinned[0].part: the “wetted hull” is now called “wetted surface”; its plan is kept.`,
    ]);
  });

  it("keep counts without a share alive as they were", () => {
    const counts = { found: 25, of: 830, weight: "50 %", origin: "invented" };
    const [, , third] = opened(["boats.classes[infested-30-days].carriesLive", counts]).boats.classes;
    expect(third?.fouled).toMatchObject({ found: 25, of: 830 });
    expect(third?.living).toBeUndefined();
  });

  it("keep ranges", () => {
    const { boats } = opened(["boats.otherPathways", "0.1 to 0.2 to 0.9 %/yr"]);
    expect(boats.otherWays?.[0]?.chance).toMatchObject({
      text: "0.1 to 0.2 to 0.9 %/yr",
      spread: { low: 0.001 },
    });
  });

  it("turn an own value of the retired assumption into that per fouled launch, and say so", () => {
    const overrides = [
      { id: "growth.settlers-per-month", value: "1500", reason: "plates" },
      { id: retired, value: "0.002", reason: "own estimate" },
    ];
    const study = opened(["overrides", overrides]);
    expect(study.overrides.map(({ id }) => id)).toEqual([
      "growth.settlers-per-month",
      "arrival.founding-unknown",
    ]);
    expect(study.overrides[1]).toMatchObject({ value: "0.002", reason: "own estimate" });
    expect(study.study.fromEarlier.at(-1)).toContain(retired);
    // Each launch that was entered as carrying live mussels keeps the chance of 0.002: no living share scales it.
    expect(study.boats.classes.map(({ living }) => living)).toEqual(study.boats.classes.map(() => undefined));
  });

  it("turn an own price of a rack by its area into the part by area, with nothing by mass, and say so", () => {
    const overrides = [{ id: "cleaning.rack.rate", value: "50 to 60 to 80 $/m2", reason: "quote" }];
    const study = readStudyText(editedText([["overrides", overrides]]), "lake.yaml");
    expect(study.overrides).toMatchObject([
      { id: "cleaning.rack.base", value: "50 to 60 to 80 $/m2", reason: "quote" },
      { id: "cleaning.rack.removal", value: "$0/kg" },
    ]);
    expect(study.study.fromEarlier).toEqual([expect.stringContaining("cleaning.rack.rate")]);
    const { assumed } = prepareStudy(study, realSet());
    expect([assumed("cleaning.rack.base"), assumed("cleaning.rack.removal")]).toEqual([60, 0]);
  });

  it("add to what was told before", () => {
    const { fromEarlier } = opened(["study.fromEarlier", ["told before"]]).study;
    expect(fromEarlier).toHaveLength(8);
    expect(fromEarlier[0]).toBe("told before");
  });

  it.each([
    ['boats.classes[0 "never-left"].carriesLive', "boats.classes[never-left].carriesLive", "3 %"],
    ["boats.otherPathways", "boats.otherPathways", "1 %/yr"],
  ])("%s is told as unknown, and lost in no way, beside that of today", (path, place, value) => {
    expect(problemsIn(editedText([[place, value]]))).toMatchObject([{ path, found: "an unknown key" }]);
  });

  it("are told as unknown beside those of today also where others are from before", () => {
    const otherWays: unknown[] = [];
    const problems = problemsIn(changedText(["boats.otherWays", otherWays]));
    expect(problems).toMatchObject([{ path: "boats.otherPathways", found: "an unknown key" }]);
  });

  it("are judged by the same rules: a wrong share is told at its place of today", () => {
    expect(problemsIn(changedText(["boats.otherPathways", "3 yr"]))).toMatchObject([
      { path: "boats.otherWays[0].chance", found: '"3 yr"' },
    ]);
    expect(problemsIn(changedText(["boats.classes[0].carriesLive", "130 %"]))).toMatchObject([
      { path: 'boats.classes[0 "never-left"].fouled', found: '"130 %"' },
    ]);
  });

  it("may be left out: other ways in are then a typical share", () => {
    const study = opened(["boats.otherPathways", absent]);
    expect(study.boats.otherWays).toBeUndefined();
    expect(study.study.fromEarlier).toHaveLength(6);
  });
});
