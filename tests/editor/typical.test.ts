import { describe, expect, it } from "vitest";
import { typicalAssumptions } from "../../src/assumptions/typical.js";
import { draftOf } from "../../src/editor/draft.js";
import { groupFieldsAt } from "../../src/editor/field-at.js";
import { formOf } from "../../src/editor/form.js";
import type { FormNode } from "../../src/editor/form-node.js";
import { type SchemaNode, studyNode } from "../../src/editor/schema-node.js";
import { assumptions } from "../report/runs.js";
import { exampleText } from "../study/example.js";

const all = (nodes: readonly FormNode[]): FormNode[] =>
  nodes.flatMap((node) => [node, ...all(node.children)]);

/** The typical values that fields of the schema name, wherever they stand. */
function typicalIn(node: SchemaNode): readonly string[] {
  const inner = [
    ...Object.values(node.properties ?? {}),
    ...(node.items ? [node.items] : []),
    ...(node.anyOf ?? []),
    ...(node.oneOf ?? []),
  ];
  return [...(node.typical ?? []), ...inner.flatMap(typicalIn)];
}

describe("typical values beside a field", () => {
  const draft = draftOf(exampleText("ninemoss"), "ninemoss.yaml");
  const at = ["options", 1];
  const hintOf = (key: string, entries: typeof assumptions.entries) =>
    all(formOf(groupFieldsAt(at, draft.document) ?? [], at, { ...draft, entries })).find(({ name }) =>
      name.endsWith(`/${key}`),
    )?.typical;

  it("are told in words with their range", () => {
    // .69, .81, .90: notes of the project on sensitivity of an inspector; .45, .65, .81 and .96, .98, .99 on coverage
    expect(hintOf("inspection", assumptions.entries)).toBe(
      "share of fouled boats that an inspector finds 81 % (69 to 90 %)",
    );
    expect(hintOf("coverage", assumptions.entries)).toBe(
      "coverage of roadside stations by day 65 % (45 to 81 %); coverage of a ramp locked outside hours 98 % (96 to 99 %)",
    );
    expect(hintOf("deterrence", assumptions.entries)).toBe("");
  });

  it("have the unit in which the set holds them, and none for a pure number", () => {
    const place = ["structures", 5];
    const nodes = all(
      formOf(groupFieldsAt(place, draft.document) ?? [], place, { ...draft, entries: assumptions.entries }),
    );
    const hint = (key: string) => nodes.find(({ name }) => name.endsWith(`/${key}`))?.typical;
    // By hand, of assumptions/deliveries.yaml.
    expect(hint("efficiency")).toBe("efficiency of irrigation pumps 65 % (45 to 80 %)");
    expect(hint("nozzleBore")).toBe("bore of sprinkler nozzles 0.0045 m (0.003 to 0.007 m)");
    expect(hint("lostDeliveries")).toBe("");
  });

  it("come from the set of assumptions, not from the program", () => {
    const entry = assumptions.entries.get("typical.sensitivity");
    if (!entry) throw new Error("no entry typical.sensitivity");
    const changed = new Map([...assumptions.entries, [entry.id, { ...entry, value: 0.75 }] as const]);
    expect(hintOf("inspection", changed)).toContain("75 % (69 to 90 %)");
  });

  it("stand in the set, and each is offered somewhere", () => {
    const named = new Set(typicalIn(studyNode()));
    expect([...named].filter((id) => !assumptions.entries.has(id))).toEqual([]);
    expect(Object.keys(typicalAssumptions).filter((id) => !named.has(id))).toEqual([]);
  });
});

describe("typical values of what another field beside says", () => {
  it("are those of the phase", () => {
    const draft = draftOf(exampleText("sorrel-bend"), "sorrel-bend.yaml");
    const at = ["report", "found"];
    const { entries } = assumptions;
    const nodes = all(formOf(groupFieldsAt(at, draft.document) ?? [], at, { ...draft, entries }));
    const hint = (phase: number) =>
      nodes.find(({ name }) => name === `report/found/phases/${phase}/cost`)?.typical ?? "no field";
    expect(hint(0)).toMatch(/^price of a plankton sample .* 210 \$ \(120 to 420 \$\); .*day of two people/);
    expect(hint(2)).toMatch(
      /^day of two people with a boat .*; price of a day of underwater inspection 3,000 \$/,
    );
    expect(hint(5)).toBe("");
    expect(nodes.find(({ name }) => name === "report/found/cleanYears")?.typical).toContain(
      "5 yr (3 to 7 yr)",
    );
  });
});
