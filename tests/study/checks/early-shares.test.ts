import { describe, expect, it } from "vitest";
import { draftOf } from "../../../src/editor/draft.js";

/** What is told of values that are there, in a study of which most is still missing. */
const toldIn = (document: object) =>
  draftOf(JSON.stringify(document), "study.json")
    .problems.filter(({ found }) => found !== "nothing")
    .map(({ at, found }) => [at?.join("/"), found]);

const classes = (...shares: readonly (string | undefined)[]) => ({
  boats: { classes: shares.map((share, index) => ({ name: `Class ${index + 1}`, share })) },
});

describe("shares of a whole, before the study is complete", () => {
  it("are told with their names where they do not make it up", () => {
    const found = 'shares that add up to 90 %: "Class 1" 60 %, "Class 2" 30 %';
    expect(toldIn(classes("60 %", "30 %"))).toEqual([["boats/classes", found]]);
    const sites = [
      { name: "Cove", share: "80 %" },
      { name: "Gate", share: "40 %" },
    ];
    const all = 'shares that add up to 120 %: "Cove" 80 %, "Gate" 40 %';
    expect(toldIn({ boats: { sites } })).toEqual([["boats/sites", all]]);
  });

  it("are awaited while one is missing, unless the others are too much already", () => {
    expect(toldIn(classes("60 %", undefined))).toEqual([]);
    expect(toldIn(classes("60 %", "50 %", undefined))).toHaveLength(1);
    expect(toldIn(classes("60 %", "40 %"))).toEqual([]);
  });

  it("of who pays are told by the names of those who pay, of a structure and of a response", () => {
    const bearer = { town: "60 %", district: "30 %" };
    const bearers = [{ id: "town", name: "Town of Alder" }];
    const found = 'shares that add up to 90 %: "Town of Alder" 60 %, "district" 30 %';
    const told = toldIn({
      money: { bearers },
      structures: [{ kind: "dock", bearer }],
      options: [{ response: { bearer } }],
    });
    expect(told).toEqual([
      ["structures/0/bearer", found],
      ["options/0/response/bearer", found],
    ]);
  });
});
