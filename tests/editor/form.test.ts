import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { draftOf } from "../../src/editor/draft.js";
import { groupFieldsAt } from "../../src/editor/field-at.js";
import type { NamedField } from "../../src/editor/fields.js";
import { formOf } from "../../src/editor/form.js";
import { editsOf } from "../../src/editor/form-edits.js";
import type { FormNode } from "../../src/editor/form-node.js";
import { childOf, itemsOf } from "../../src/editor/form-values.js";
import { fieldsOfPart, studyParts } from "../../src/editor/parts.js";
import { edited, type Place } from "../../src/editor/study-text.js";
import { examplesFolder } from "../../src/report/document/assets.js";
import { postedOf } from "./posted.js";

const textOf = (name: string) => readFileSync(join(examplesFolder, `${name}.yaml`), "utf8");
const valueAt = (document: unknown, at: Place) =>
  at.reduce<unknown>((found, key) => childOf(found, key), document);

/** Every page of forms of a study: its parts, each structure and each option. */
function pagesOf(document: unknown): { at: Place; fields: readonly NamedField[] }[] {
  const sections = studyParts
    .filter(({ keys }) => keys.length > 0)
    .map((part) => ({ at: [part.section], fields: fieldsOfPart(part) }));
  const items = ["structures", "options"].flatMap((section) =>
    itemsOf(childOf(document, section)).map((_item, index) => {
      const at = [section, index];
      return { at, fields: groupFieldsAt(at, document) ?? [] };
    }),
  );
  return [...sections, ...items];
}

const all = (nodes: readonly FormNode[]): FormNode[] =>
  nodes.flatMap((node) => [node, ...all(node.children)]);

describe.each(["ninemoss", "sorrel-bend"])("the forms of the example %s", (name) => {
  const text = textOf(name);
  const draft = draftOf(text, name);
  const pages = pagesOf(draft.document);

  it("show every value of the study file", () => {
    const shown = pages.flatMap(({ at, fields }) => all(formOf(fields, at, draft))).map(({ name }) => name);
    const leaves = (value: unknown, at: Place): string[] =>
      typeof value === "object" && value !== null && !Array.isArray(value)
        ? Object.entries(value).flatMap(([key, item]) => leaves(item, [...at, key]))
        : Array.isArray(value) && value.some((item) => typeof item === "object")
          ? value.flatMap((item, index) => leaves(item, [...at, index]))
          : [at.join("/")];
    // The kind of a structure and the way of its supply are chosen by buttons; overrides have a page of their own.
    const missing = leaves(draft.document, []).filter(
      (place) => !shown.includes(place) && !/\/(kind|by)$|^overrides/.test(place),
    );
    expect(missing).toEqual([]);
  });

  it("change nothing when they are sent as they are shown", () => {
    for (const { at, fields } of pages) {
      const posted = postedOf(formOf(fields, at, draft));
      expect(editsOf(fields, at, valueAt(draft.document, at), { posted, writing: draft.writing })).toEqual(
        [],
      );
    }
  });

  it("find no problem in it", () => {
    expect(draft.problems).toEqual([]);
    expect([...draft.parts.values()].every(({ state }) => state === "complete")).toBe(true);
  });
});

describe("shares of who pays that do not add up", () => {
  it("are told at their field, not only at the head of the page", () => {
    const dock = { id: "pier", kind: "dock", bearer: { town: "60 %", district: "30 %" } };
    const draft = draftOf(JSON.stringify({ structures: [dock] }), "study.json");
    const at = ["structures", 0];
    const nodes = all(formOf(groupFieldsAt(at, draft.document) ?? [], at, draft));
    expect(nodes.find(({ name }) => name === "structures/0/bearer")?.errors).toEqual([
      expect.stringContaining("add up to 90 %"),
    ]);
  });
});

describe("a changed value", () => {
  const text = textOf("ninemoss");

  it("leaves comments, order and unknown keys", () => {
    const odd = text.replace(
      "  thermoclineDepth: 6 m",
      "  thermoclineDepth: 6 m # sounded in 2019\n  surveyor: Ada",
    );
    const changed = edited(odd, [{ at: ["lake", "thermoclineDepth"], value: "7 m" }]);
    expect(changed).toContain("thermoclineDepth: 7 m # sounded in 2019\n  surveyor: Ada");
    expect(changed).toContain("# An invented soft-water lake.");
    expect(parse(changed)).toEqual({ ...parse(odd), lake: { ...parse(odd).lake, thermoclineDepth: "7 m" } });
  });

  it("leaves JSON as JSON", () => {
    const json = JSON.stringify(parse(text));
    expect(JSON.parse(edited(json, [{ at: ["lake", "name"], value: "Other" }])).lake.name).toBe("Other");
  });
});
