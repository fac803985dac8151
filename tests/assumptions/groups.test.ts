import { describe, expect, it } from "vitest";
import type { Source } from "../../src/assumptions/entry.js";
import { readGroups } from "../../src/assumptions/groups.js";
import { heldIds, realSet } from "./real.js";

const sources = new Map<string, Source>([["a-source", { citation: "A source", read: "text" }]]);
const ids = heldIds(["work.one", "work.two", "work.three"]);
const group = {
  id: "work",
  name: "Work",
  members: ["work.one", "work.two"],
  rankCorrelation: 0.5,
  basis: "judged",
  source: "a-source",
  note: "",
};

function problemsOf(content: unknown): string[] {
  const problems: string[] = [];
  readGroups(content, ids, sources, problems);
  return problems;
}

describe("groups of assumptions that move together", () => {
  it("are read as they stand", () => {
    const problems: string[] = [];
    expect(readGroups([group], ids, sources, problems)).toEqual([group]);
    expect(problems).toEqual([]);
  });

  it.each([
    ["a member that no file holds", [{ ...group, members: ["work.one", "work.four"] }], '"work.four"'],
    ["a source that is not cited", [{ ...group, source: "a-friend" }], '"a-friend"'],
    ["one member alone", [{ ...group, members: ["work.one"] }], "at least two members"],
    ["members that repeat each other", [{ ...group, rankCorrelation: 1 }], "below 1"],
    ["members that do not move together", [{ ...group, rankCorrelation: 0 }], "above 0"],
    ["an unknown key", [{ ...group, colour: "red" }], "colour"],
    [
      "a member of two groups",
      [group, { ...group, id: "more", members: ["work.two", "work.three"] }],
      "work.two is in work and in more",
    ],
  ])("are refused for %s, by file and remedy", (_mistake, content, words) => {
    const [problem = "", ...more] = problemsOf(content);
    expect(problem).toMatch(/^groups\.yaml: .*(Correct|Keep|Add) .*\.$/);
    expect(problem).toContain(words);
    expect(more).toEqual([]);
  });

  it("that the project is delivered with have members that are uncertain", () => {
    const { groups, entries: real } = realSet();
    expect(groups.length).toBeGreaterThan(0);
    const fixed = groups
      .flatMap(({ members }) => members)
      .filter((id) => real.get(id)?.low === real.get(id)?.high);
    expect(fixed).toEqual([]);
  });
});
