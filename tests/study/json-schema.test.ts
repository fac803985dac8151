import { describe, expect, it } from "vitest";
import { z } from "zod";
import { structureKinds } from "../../src/model/structures/kinds.js";
import { studyJsonSchema } from "../../src/study/format/schema.js";
import { absent, exampleDocument, put } from "./example.js";

interface Node {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly pattern?: string;
  readonly const?: unknown;
  readonly additionalProperties?: unknown;
  /** Present where the author chooses the keys: bearers with shares. */
  readonly propertyNames?: Node;
  readonly description?: string;
}

const schema: Node = studyJsonSchema();
const children = (node: Node): readonly Node[] => [
  ...Object.values(node.properties ?? {}),
  ...(node.items ? [node.items] : []),
  ...(node.propertyNames ? [node.propertyNames] : []),
  ...(node.anyOf ?? []),
  ...(node.oneOf ?? []),
];
const all = (node: Node): Node[] => [node, ...children(node).flatMap(all)];
const nodes = all(schema);
const sections = ["study", "lake", "structures", "boats", "options", "money"];

describe("the JSON Schema of the study file", () => {
  it("describes a group of fields and names its sections", () => {
    expect(schema.type).toBe("object");
    expect(Object.keys(schema.properties ?? {})).toEqual([
      ...sections,
      "overrides",
      "workOrders",
      "search",
      "report",
    ]);
    expect(schema.required).toEqual(sections);
  });

  it("is plain JSON", () => {
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it("uses the types of JSON Schema only", () => {
    const types = new Set(nodes.flatMap(({ type }) => type ?? []));
    const known = ["object", "array", "string", "number", "integer", "boolean", "null"];
    expect([...types].filter((type) => !known.includes(type))).toEqual([]);
  });

  it("requires no field that it does not describe, and allows no other", () => {
    for (const node of nodes.filter(({ type }) => type === "object")) {
      expect(Object.keys(node.properties ?? {})).toEqual(expect.arrayContaining([...(node.required ?? [])]));
      if (node.propertyNames) expect(node.propertyNames.pattern).toBeDefined();
      else expect(node.additionalProperties).toBe(false);
    }
  });

  it("holds patterns that are regular expressions", () => {
    const patterns = nodes.flatMap(({ pattern }) => pattern ?? []);
    expect(patterns.length).toBeGreaterThan(0);
    for (const pattern of patterns) expect(() => new RegExp(pattern, "u")).not.toThrow();
  });

  it("has one branch for each kind of structure", () => {
    const kinds = schema.properties?.structures?.items?.oneOf?.map(
      ({ properties }) => properties?.kind?.const,
    );
    expect(kinds).toEqual(structureKinds.map(({ kind }) => kind));
  });

  it("shows an author how a quantity is written", () => {
    const elevation = schema.properties?.lake?.properties?.maximumElevation;
    expect(elevation?.description).toContain('"1,240 ft"');
  });
});

describe("the JSON Schema, read back as rules", () => {
  const rules = z.fromJSONSchema(JSON.parse(JSON.stringify(schema)));

  it.each(["sorrel-bend", "ninemoss"] as const)("accepts the example %s", (name) => {
    expect(rules.safeParse(exampleDocument(name)).error?.issues ?? []).toEqual([]);
  });

  it.each([
    ["as text", { csv: "date,elevation (ft)\n2011-01-01,2100\n", origin: "gauge", fillGapsUpTo: 3 }],
    ["in a file", { file: "Pegelstände 2011.CSV", origin: "gauge" }],
  ])("accepts a record of levels %s, for the lake and for another schedule", (_where, record) => {
    const document = exampleDocument();
    put(document, "lake.drawdown", absent);
    put(document, "lake.record", record);
    put(document, "lake.otherSchedules", [{ id: "other", name: "Other", record }]);
    expect(rules.safeParse(document).error?.issues ?? []).toEqual([]);
  });

  it("refuses a record in another folder", () => {
    const document = exampleDocument();
    put(document, "lake.record", { file: "../levels.csv", origin: "gauge" });
    expect(rules.safeParse(document).success).toBe(false);
  });

  it.each([
    ["without a lake", "lake", absent],
    ["with an unknown key", "lake.colour", "blue"],
    ["with a missing month", "boats.launches.jul", absent],
    ["with an unknown kind of structure", "structures[0].kind", "canal"],
    ["with a horizon of no year", "money.horizon", 0],
  ])("refuses a study %s", (_what, place, value) => {
    const document = exampleDocument();
    put(document, place, value);
    expect(rules.safeParse(document).success).toBe(false);
  });
});
