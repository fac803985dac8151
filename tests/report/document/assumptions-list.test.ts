import { describe, expect, it } from "vitest";
import { assumptionRow, assumptionRows } from "../../../src/report/document/assumptions-list.js";
import { assumptions } from "../runs.js";

const id = "arrival.founding-unknown";
const reading = {
  assumptions,
  used: new Set([id, "growth.bulk-density"]),
  own: new Map([["growth.bulk-density", { value: "450", reason: "weighed" }]]),
};
const ids = (...parameters: [Parameters<typeof assumptionRows>[1], string]) =>
  assumptionRows(reading, ...parameters).map((row) => row.id);

describe("the list of assumptions", () => {
  it("tells value with unit, range, basis, full citation, note, and whether the study uses it", () => {
    const entry = assumptions.entries.get(id);
    if (!entry) throw new Error("no such assumption");
    const row = assumptionRow(entry, reading);
    expect(row).toMatchObject({
      name: "Chance that a fouled launch of unknown origin founds a population",
      value: `${entry.value} share`,
      range: `${entry.low}–${entry.high}; lognormal`,
      basis: "judged",
      isJudged: true,
      use: "used",
      own: undefined,
    });
    expect(row.citation).toBe(assumptions.sources.get("founding-counts")?.citation);
    expect(row.note).toContain("boat with mussels on it, dead or alive");
  });

  it("shows what the study uses, what is judged of that, what has an own value, or all", () => {
    expect(ids("used", "")).toEqual([id, "growth.bulk-density"]);
    expect(ids("judged", "")).toEqual([id]);
    expect(ids("own", "")).toEqual(["growth.bulk-density"]);
    expect(ids("all", "")).toHaveLength(assumptions.entries.size);
  });

  it("is searched by words in any order and case, in names, citations and notes", () => {
    expect(ids("all", "POPULATION fouled launch founds")).toContain(id);
    expect(ids("all", "dead alive")).toContain(id);
    expect(ids("all", "zzz")).toEqual([]);
    expect(ids("used", "bulk")).toEqual(["growth.bulk-density"]);
  });

  it.each(["diver", "diving", "dive crew", "Divers"])("finds the visit of divers by %s, first", (words) => {
    expect(ids("all", words)[0]).toBe("cleaning.rack.visit");
  });

  it("has those first that hold the words in their title, then those with other words for it", () => {
    const found = assumptionRows(reading, "all", "trash rack");
    const inTitle = found.map(({ name }) => name.toLowerCase().includes("trash rack"));
    const last = inTitle.lastIndexOf(true);
    expect(last).toBe(inTitle.filter(Boolean).length - 1);
    expect(last).toBeGreaterThan(0);
    expect(found[last + 1]?.synonyms).toContain("trash rack");
  });

  it("finds what is typed in the plural", () => {
    expect(ids("all", "velocities")).toEqual(ids("all", "velocity"));
  });

  it("finds bare ids too, last, and no words within other words", () => {
    expect(ids("all", "founding-unknown")).toEqual([id]);
    expect(ids("all", "pig")).not.toContain("irrigation.plugged-share");
    expect(ids("all", "pig")).toContain("cleaning.conduit.rate");
  });

  it("finds no more than it should: words of another thing only", () => {
    const ids = assumptionRows(reading, "all", "interest").map(({ id }) => id);
    expect(ids.length).toBeLessThan(12);
  });

  it("of a study that cannot be computed yet counts all as used, and says that it is not known", () => {
    const rows = assumptionRows({ ...reading, used: undefined }, "used", "");
    expect(rows).toHaveLength(assumptions.entries.size);
    expect(rows[0]?.use).toBe("not known yet");
  });
});
