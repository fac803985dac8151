import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { assumptionFiles, loadAssumptions, readAssumptions } from "../../src/assumptions/load.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { comparedRun } from "../../src/study/compared/compared.js";
import { prepareStudy } from "../../src/study/prepare/prepared.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { inputErrorOf, toldIn } from "../study/example.js";
import { smallLakeText } from "../study/small-lake.js";

const folder = mkdtempSync(join(tmpdir(), "agency-"));
afterAll(() => rmSync(folder, { recursive: true }));

const set = (values: string) => `name: Sorrel Water\nversion: 2026-03\nvalues:\n${values}`;
const shape = "  - { id: arrival.shape, value: 1.5, reason: counted in 2024 }\n";

function withSet(text: string) {
  writeFileSync(join(folder, "agency.yaml"), text);
  return loadAssumptions(assumptionsFolder, folder);
}

const own = (value: number) =>
  `${smallLakeText}\noverrides: [{ id: arrival.shape, value: ${value}, reason: mine }]\n`;
const study = (text = smallLakeText) => readStudyText(text, "study.yaml");
const benefits = (text: string, assumptions: ReturnType<typeof withSet>) =>
  comparedRun(study(text), assumptions).comparison.options.map(({ netBenefit }) => netBenefit.toNumber());

describe("an agency's set of own values", () => {
  it("stands after the study's own and before the project's, in each of two studies", () => {
    const assumptions = withSet(set(shape));
    const plain = loadAssumptions(assumptionsFolder);
    const other = smallLakeText.replace(/discountRate: [^\n]+/, "discountRate: 4 %/yr");
    for (const text of [smallLakeText, other]) {
      const same = text.includes("4 %/yr")
        ? own(1.5).replace(/discountRate: [^\n]+/, "discountRate: 4 %/yr")
        : own(1.5);
      expect(benefits(text, assumptions)).toEqual(benefits(same, plain));
    }
    expect(benefits(own(2), assumptions)).toEqual(benefits(own(2), plain));
  });

  it("is named with its version in the reason that is printed", () => {
    const { overrides } = prepareStudy(study(), withSet(set(shape)));
    expect(overrides.map(({ entry, reason }) => [entry.id, reason])).toEqual([
      ["arrival.shape", "counted in 2024 (values of Sorrel Water, version 2026-03)"],
    ]);
    expect(prepareStudy(study(own(2)), withSet(set(shape))).overrides.map(({ reason }) => reason)).toEqual([
      "mine",
    ]);
  });

  it("is no alteration of the folder of assumptions, and none where there is no file", () => {
    expect(withSet(set(shape)).alterations).toEqual(loadAssumptions(assumptionsFolder).alterations);
    expect(loadAssumptions(assumptionsFolder, join(folder, "none")).agency).toBeUndefined();
  });

  it.each([
    [
      "an id that is gone",
      set("  - { id: cleaning.rack.rate, value: $5/m2, reason: x }\n"),
      "cleaning.rack.base, which is read in its place",
    ],
    [
      "an id that never was",
      set("  - { id: pigs.fly, value: 1, reason: x }\n"),
      'found "pigs.fly"; allowed: an id from the assumptions',
    ],
    ["an id twice", set(shape + shape), "arrival.shape stands there twice"],
    [
      "no reason",
      set("  - { id: arrival.shape, value: 1 }\n"),
      "agency.yaml, values, 0, reason: found nothing; allowed: a text. Correct it.",
    ],
    [
      "no version",
      "name: A\nvalues: []\n",
      "agency.yaml, version: found nothing; allowed: a text or a number.",
    ],
    ["an empty file", "", "agency.yaml: found nothing; allowed: name, version and values. Correct it."],
    [
      "a key that it does not have",
      `${set(shape)}author: A. Doe\n`,
      'agency.yaml, author: found "A. Doe"; allowed: name, version and values. Correct it.',
    ],
    [
      "a value with a key that it does not have",
      set("  - { id: arrival.shape, value: 1, reason: x, unit: ft }\n"),
      'agency.yaml, values, 0, unit: found "ft"; allowed: id, value and reason. Correct it.',
    ],
    [
      "a text in place of a value",
      set("  - arrival.shape\n"),
      'agency.yaml, values, 0: found "arrival.shape"; allowed: id, value and reason. Correct it.',
    ],
    ["broken text", "name: [", "agency.yaml"],
  ])("is refused for %s", (_what, text, words) => {
    const files = new Map([...assumptionFiles(assumptionsFolder), ["agency.yaml", text]]);
    expect(() => readAssumptions(files)).toThrow(words);
  });

  it.each([
    ["a unit that does not fit", "  - { id: arrival.shape, value: 3 ft, reason: x }\n", '"3 ft"'],
    [
      "money of another currency",
      '  - { id: cleaning.rack.visit, value: "$5,000", reason: x }\n',
      '"$5,000"',
    ],
  ])("tells a study of %s, with what to do", (_what, values, found) => {
    const assumptions = withSet(set(values));
    const [told] = toldIn(inputErrorOf(() => prepareStudy(study(), assumptions)));
    expect(told?.path).toMatch(/^agency\.yaml: /);
    expect(told?.found).toBe(found);
    expect(told?.remedy).toContain("give this study a value of its own");
  });
});
