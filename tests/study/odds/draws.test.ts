import { describe, expect, test } from "vitest";
import { at } from "../../../src/lists.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { drawnStudy } from "../../../src/study/odds/draws.js";
import { readStudyFile, readStudyText } from "../../../src/study/reading/read.js";
import { assumptionSet } from "../../model/assumptions.js";
import { editedText, examplePath } from "../example.js";
import { referenceFuture } from "../reference-futures.js";

const settings = { seed: 7, sampling: "latin-hypercube" } as const;
const edited = (edits: Parameters<typeof editedText>[0]) => readStudyText(editedText(edits), "study.yaml");

const origin = "invented";
const studies: ReadonlyArray<readonly [name: string, document: () => StudyDocument]> = [
  ["Sorrel Bend", () => readStudyFile(examplePath("sorrel-bend"))],
  ["Ninemoss", () => readStudyFile(examplePath("ninemoss"))],
  [
    "a study with ranges of its boats, a structure, an option, a rate and an override",
    () =>
      edited([
        ["boats.otherWays[0].chance", "0.1 to 0.2 to 0.9 %/yr"],
        ["boats.launches.jul", "2,000 to 9,000"],
        ["boats.classes[infested-30-days].fouled", "1 to 3 to 6 %"],
        ["structures[dock].wettedArea", "4,000 to 5,400 to 9,000 ft2"],
        ["options[steps].steps.quickCheck", "60 to 80 %"],
        ["money.discountRate", "2 to 3 to 4 %/yr"],
        ["overrides", [{ id: "cleaning.rack.visit", value: "$6,000 to $9,500 to $20,000", reason: origin }]],
      ]),
  ],
  ["a lake infested already", () => edited([["lake.infestedSince", 2024]])],
  [
    "a study whose options notice late, contain and grow, with rising prices",
    () =>
      edited([
        ["options[none].monitoring", { origin }],
        ["options[weekends].monitoring", { noticedWithin: ["20 %", "70 %"], origin }],
        ["options[full-season].monitoring", { planktonTows: 12, origin }],
        [
          "options[full-season].response",
          { name: "Treatment", cost: "$500,000", chance: "40 %", latestYear: 3, origin },
        ],
        ["options[full-season].rampUp", [{ reach: "40 %", cost: "60 %" }]],
        [
          "money.escalation",
          [
            { group: "energy", rate: "2 %/yr", origin },
            { group: "other", rate: "1 %/yr", origin },
          ],
        ],
      ]),
  ],
];

/** Difference as a share, of a dollar at least: some futures of some options cost nothing. */
const gap = (found: number, expected: number) => Math.abs(found - expected) / Math.max(1, Math.abs(expected));

/** Places of a few futures: block, lake and future. */
const places = [
  [0, 0, 0],
  [0, 9, 5],
  [0, 9, 7],
  [4, 2, 4],
] as const;

describe("the futures of a study", () => {
  test.each(studies)("are those of the whole comparison with the drawn values: %s", (_name, make) => {
    const document = make();
    const drawn = drawnStudy(document, assumptionSet, settings);
    for (const place of places) {
      const [block, lake, future] = place;
      const fast = drawn.futures(block, lake);
      referenceFuture(document, assumptionSet, drawn, place).forEach((reference, option) => {
        expect(at(fast.establishment, option)[future]).toBe(reference.establishment);
        expect(gap(at(at(fast.expected, option), future), reference.expected)).toBeLessThan(1e-9);
        expect(gap(at(at(fast.cost, option), future), reference.cost)).toBeLessThan(1e-9);
        expect(gap(at(at(fast.program, option), future), reference.program)).toBeLessThan(1e-9);
        for (const chance of ["everInfested", "infestedAtEnd"] as const) {
          expect(Math.abs(at(at(fast[chance], option), future) - reference[chance])).toBeLessThan(1e-12);
        }
        if (block >= 4) expect(fast.byYear).toEqual([]);
        else {
          reference.byYear.forEach((cost, year) => {
            const found = at(at(fast.byYear, option), future * reference.byYear.length + year);
            expect(gap(found, cost)).toBeLessThan(1e-9);
          });
        }
      });
    }
  });
});
