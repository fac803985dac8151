import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { structureKindFields } from "../../src/editor/table/structure-columns.js";
import { readStructureTable } from "../../src/editor/table/structure-table.js";
import { headsAllowed, templateOf } from "../../src/editor/table/template.js";
import { structureKinds } from "../../src/model/structures/kinds.js";
import { examplesFolder } from "../../src/report/document/assets.js";

const document = parse(readFileSync(join(examplesFolder, "sorrel-bend.yaml"), "utf8"));
const read = (csv: string, kind = "dock") => readStructureTable(csv, kind, document);
const head = "name,bearer,count,floating,depth (ft),wetted area (m2),replacement cost";
const sound = 'Pier,marina,2,yes,1.5,40,"$9,000"';

const american = { system: "us", currency: "USD" } as const;

describe("a table of structures", () => {
  it("has a template for each kind, every head of which is understood", () => {
    expect([...structureKindFields().keys()]).toEqual(structureKinds.map(({ kind }) => kind));
    for (const { kind } of structureKinds) {
      const template = templateOf(kind, american, document);
      expect(read(template, kind).problems).toEqual([
        "The table has a head and no lines below it: add a line for each structure.",
      ]);
    }
  });

  it("has a line in each template that shows what goes where, with the name of who pays", () => {
    const [, example] = templateOf("dock", american, document).split("\n");
    expect(example).toContain("Example: write over this line");
    expect(example).toContain(document.money.bearers[0].name);
    expect(headsAllowed("dock", american)).toContain("wetted area (ft2)");
  });

  it("shows amounts without a sign, which the head has in the study's currency", () => {
    const [head, example] = templateOf("dock", { system: "si", currency: "EUR" }, document).split("\n");
    expect(head).toContain("replacement cost (€)");
    expect(example).toContain("17,000");
    for (const { kind } of structureKinds)
      expect(templateOf(kind, { system: "si", currency: "CHF" }, document)).not.toContain("$");
  });

  it("leaves the template's line out beside lines of one's own", () => {
    const csv = `${templateOf("dock", american, document).trim()}\n`;
    expect(read(csv).lines).toEqual([]);
    const own = read([head, sound.replace("Pier", "Example: x"), sound].join("\n"));
    expect(own.lines.map(({ name }) => name)).toEqual(["Pier"]);
  });

  it("takes who pays by name as well as by id", () => {
    const { id, name } = document.money.bearers[0];
    const [line] = read([head, sound.replace("marina", name.toUpperCase())].join("\n")).lines;
    expect(line?.problems).toEqual([]);
    expect(line?.structure).toMatchObject({ bearer: id });
  });

  it("takes the head of who pays in the words of the page and by its key", () => {
    expect(templateOf("dock", american, document).split("\n")[0]).toContain("who pays");
    for (const words of ["who pays", "bearer"]) {
      const [line] = read([head.replace(/\bbearer\b/, words), sound].join("\n")).lines;
      expect(line?.structure).toMatchObject({ bearer: "marina" });
    }
  });

  it("says whom the study names where it names nobody of that name", () => {
    const [line] = read([head, sound.replace("marina", "Somebody new")].join("\n")).lines;
    expect(line?.problems).toEqual([
      `who pays: Found "Somebody new"; allowed: one of those that this study names: ${document.money.bearers.map(({ name }: { name: string }) => name).join(", ")}. Correct it, or add it there first.`,
    ]);
  });

  it("lets lines name each other by id, and names the first dozen of what may be named", () => {
    const lines = ["Second,service-line-11", "Third,somewhere"].join("\n");
    const known = Array.from({ length: 14 }, (_, index) => ({ id: `line-${index}`, name: `Line ${index}` }));
    const csv = `name,upstream\nFirst,\n${lines}`;
    const upstream = (structures: readonly object[]) =>
      readStructureTable(csv, "service-line", { ...document, structures }).lines.map(({ problems }) =>
        problems.find((each) => each.startsWith("upstream")),
      );
    const [, second, third] = upstream(document.structures);
    expect(second).toBeUndefined();
    expect(third).toContain("City raw-water intake, ");
    expect(upstream([])[2]).toContain("names: none yet. ");
    expect(upstream(known)[2]).toMatch(/names: Line 0, .*, Line 11 and 2 more\. /);
  });

  it("is read with every line of a template written over, its values as they are shown there", () => {
    for (const { kind } of structureKinds) {
      const csv = templateOf(kind, american, document).replace("Example: write over this line", "Mine");
      const [line] = read(csv, kind).lines;
      for (const problem of line?.problems ?? []) expect(problem).not.toContain("a unit is missing");
    }
  });

  it.each([",", "\t", ";"])("is read with the units of its heads, cells parted by %j", (between) => {
    const csv = [head, sound.replace('"$9,000"', "$9000")].join("\n").replaceAll(",", between);
    const [line] = read(csv).lines;
    expect(line?.problems).toEqual([]);
    expect(line?.structure).toMatchObject({
      ...{ kind: "dock", name: "Pier", bearer: "marina", count: 2, floating: true },
      ...{ depth: "1.5 ft", wettedArea: "40 m2", replacementCost: "$9000" },
    });
  });

  it("tells faults by line, in the words of the head, and gives back the bad lines alone", () => {
    const table = read(
      [head, sound, sound.replace(",40,", ",large,"), sound.replace("marina", "nobody")].join("\n"),
    );
    expect(table.lines.map(({ line, problems }) => [line, problems.length])).toEqual([
      [2, 0],
      [3, 1],
      [4, 1],
    ]);
    expect(table.lines[1]?.problems[0]).toContain('wetted area: Found "large"');
    expect(table.lines[2]?.problems[0]).toContain("nobody");
    expect(table.rest.trim().split("\n")).toHaveLength(3);
  });

  it.each([
    ["thousands without quotation marks", 'Pier,marina,2,yes,1.5,12,000,"$9,000"'],
    ["a decimal comma", 'Pier,marina,2,yes,1.5,40,5,"$9,000"'],
  ])("takes no line with more values than heads: %s", (_name, line) => {
    const table = read([head, line].join("\n"));
    expect(table.lines[0]?.problems).toEqual([expect.stringContaining("Found 8 values; allowed: 7 values")]);
    expect(table.rest).toContain(line.includes("12,000") ? "12,000" : "40,5");
  });

  it("reads decimal commas where semicolons stand between values", () => {
    const line = "Pier;marina;2;yes;1,5;40,5;$9.000,50";
    const [structure] = read([head.replaceAll(",", ";"), line].join("\n")).lines;
    expect(structure?.problems).toEqual([]);
    expect(structure?.structure).toMatchObject({
      ...{ depth: "1.5 ft", wettedArea: "40.5 m2", replacementCost: "$9000.50" },
    });
  });

  it("asks about a number that may be twelve or twelve thousand, and gives the line back as it was pasted", () => {
    const lines = ["Pier;marina;2;yes;1,5;40,5;$9000", "Dock;marina;2;yes;1,5;12,000;$9000"];
    const table = read([head.replaceAll(",", ";"), ...lines].join("\n"));
    expect(table.lines.map(({ problems }) => problems.length)).toEqual([0, 1]);
    expect(table.lines[1]?.problems[0]).toContain('Found "12,000", which may be 12.000 or 12000');
    expect(table.rest.trim().split("\n")).toEqual([head.replaceAll(",", ";"), lines[1]]);
    expect(read(table.rest).lines[0]?.problems).toHaveLength(1);
  });

  it("takes no line that says it is of another kind", () => {
    const table = read(`kind,${head}\nintake,${sound}\nDock,${sound}`);
    expect(table.lines.map(({ problems }) => problems.length)).toEqual([1, 0]);
  });

  it.each([
    ["", "There is no table yet"],
    ["name,colour\nPier,red", 'found "colour"'],
    ["name,name\nPier,Pier", "a second time"],
    ["count\n2", 'no column "name"'],
    [`${head}\n"Pier`, "quotation mark"],
  ])("that cannot be read says why and stays as it is: %j", (csv, told) => {
    const table = read(csv);
    expect(table.problems.join()).toContain(told);
    expect(table.lines).toEqual([]);
    expect(table.rest).toBe(csv);
  });
});
