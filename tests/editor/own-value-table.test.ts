import { describe, expect, it } from "vitest";
import { ownValueTable, ownValueText } from "../../src/editor/table/own-value-table.js";
import { realSet } from "../assumptions/real.js";

const assumptions = realSet();
const study = { text: "study: { name: Begun }\n", fileName: "begun.yaml" };
const read = (csv: string, text = study.text) => ownValueTable(csv, { ...study, text }, assumptions);
const wrong = (csv: string) =>
  read(csv).problems.map(({ line, found, allowed, remedy }) => `${line}: ${found}; ${allowed}; ${remedy}`);

const three = [
  ["growth.bulk-density", "28", "lb/ft3", "weighed in June"],
  ["Price of an hour of maintenance work", "85", "USD/h", "contract, 2025"],
  ["cleaning.rack.visit", "$9,000", "", "invoice"],
];
const quoted = (cells: readonly string[]) => cells.map((cell) => `"${cell}"`).join(",");

describe("a table of own values", () => {
  it.each([
    ["commas", three.map(quoted).join("\n")],
    ["semicolons", three.map((cells) => cells.join(";")).join("\r\n")],
    ["tabs, as spreadsheets copy", three.map((cells) => cells.join("\t")).join("\n")],
    [
      "a head in another order",
      ["reason;unit;value;title", ...three.map((cells) => cells.toReversed().join(";"))].join("\n"),
    ],
  ])("is read with %s, by id or title, the unit beside the value or with it", (_how, csv) => {
    const { lines, problems, text } = read(csv);
    expect(problems).toEqual([]);
    expect(lines.map(({ id, value }) => [id, value])).toEqual([
      ["growth.bulk-density", "28 lb/ft3"],
      ["labour.maintenance-rate", "85 USD/h"],
      ["cleaning.rack.visit", "$9,000"],
    ]);
    expect(text).toContain("reason: weighed in June");
  });

  it("replaces what the study has, and leaves all else of its text as it is", () => {
    const before = `study: { name: Begun } # kept
overrides:
  - { id: arrival.shape, value: 1.5, reason: "kept" }
  - { id: growth.bulk-density, value: 450, reason: "old" }
`;
    const { text } = read(three.map(quoted).join("\n"), before);
    expect(text).toContain("# kept");
    expect(text).toContain('{ id: arrival.shape, value: 1.5, reason: "kept" }');
    expect(text).not.toContain("old");
    expect(text.match(/growth\.bulk-density/g)).toHaveLength(1);
  });

  it("takes units as the list of assumptions states them", () => {
    const all = [...assumptions.entries.values()].map(({ id, value, unit }) =>
      quoted([id, String(value), unit.startsWith("$") ? unit.replace("$", "USD") : unit, "as stated"]),
    );
    expect(read(all.join("\n")).problems).toEqual([]);
  });

  it("tells every fault by its line, with what is allowed, and changes nothing", () => {
    const csv = [
      "growth.bulk-density;28;lb;weighed",
      "cleaning.rack.rate;85;$/m2;contract",
      "cleaning.rack.visit;-9000;$;invoice",
      "cleaning.rack.visit;9000;$;",
      "shell.size;3;in;x",
      "hydropower.outage-lost-share;140 %;;judged here",
      "arrival.shape;;;x",
    ].join("\n");
    const told = wrong(csv);
    expect(told[0]).toMatch(
      /^1: 28 lb; a mass per volume such as .*lb\/ft3.*; Correct the value or its unit/,
    );
    expect(told[1]).toMatch(/^2: cleaning\.rack\.rate; cleaning\.rack\.base, which is read in its place/);
    expect(told[2]).toMatch(/^3: -9000 \$; an amount of money of at least 0/);
    expect(told[3]).toMatch(/^4: no reason for cleaning\.rack\.visit; .*; Write where the value comes from/);
    expect(told[4]).toMatch(/^4: cleaning\.rack\.visit a second time, after line 3; one line for each/);
    expect(told[5]).toMatch(/^5: shell\.size; an id from the assumptions, for instance shell\./);
    expect(told[6]).toMatch(/^6: 140 %; a share of at most 100 %/);
    expect(told[7]).toMatch(/^7: no value; a bare number/);
    expect(read(csv).text).toBe(study.text);
  });

  it.each([
    ["nothing", "", "no line"],
    ["a quotation mark out of place", 'growth.bulk-density,2"8,lb/ft3,x', "a quotation mark out of place"],
    ["names of the language", "constructor,__proto__,toString,x", "constructor"],
    ["too many lines", "arrival.shape,1,,x\n".repeat(601), "more than 600 lines"],
  ])("tells of %s", (_what, csv, found) => {
    expect(wrong(csv).join("\n")).toContain(found);
  });

  it("of another study is read as it was written", () => {
    const own = new Map([["arrival.shape", { value: "1.5", reason: 'seen, "twice"' }]]);
    const { lines, problems } = read(ownValueText(own));
    expect(problems).toEqual([]);
    expect(lines).toMatchObject([{ id: "arrival.shape", value: "1.5", reason: 'seen, "twice"' }]);
    expect(ownValueText(new Map())).toBe("");
  });
});
