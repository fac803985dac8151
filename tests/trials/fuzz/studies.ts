import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { parse, stringify } from "yaml";
import { examplesFolder } from "#product/report/document/assets.js";
import { changedLines, mutated, mutation } from "./mutation.js";
import { anyText } from "./values.js";

const example = (name: string): unknown => parse(readFileSync(join(examplesFolder, `${name}.yaml`), "utf8"));

/** Lakes that are computed in milliseconds and together have each kind of structure and each part of the format. */
export function smallLakes(): readonly unknown[] {
  const sorrel = example("sorrel-bend");
  const parts = [["city-intake"], ["powerhouse"], ["fire-lines", "north-ramp"], ["marina", "reservoir-wide"]];
  return [example("ninemoss"), ...parts.map((ids) => withStructures(sorrel, ids))];
}

/** A lake with some of its structures alone, over a few years. */
export function withStructures(document: unknown, ids: readonly string[]): unknown {
  const copy = structuredClone(document);
  const isNamed = (item: unknown) => ids.includes(String(get(item, "id")));
  const structures = get(copy, "structures");
  Reflect.set(Object(copy), "structures", Array.isArray(structures) ? structures.filter(isNamed) : []);
  Reflect.set(Object(get(copy, "money")), "horizon", 8);
  return copy;
}

const get = (value: unknown, key: string): unknown =>
  typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined;

/** Texts of studies, most of them changed in one to four places. */
export function studyTexts(): fc.Arbitrary<string> {
  const lake = fc.constantFrom(...smallLakes());
  const document = fc
    .tuple(lake, fc.array(mutation, { minLength: 1, maxLength: 4 }))
    .map(([base, changes]) => mutated(base, changes));
  const yaml = fc
    .tuple(lake, fc.array(fc.tuple(fc.nat(100_000), anyText), { minLength: 1, maxLength: 3 }))
    .map(([base, changes]) =>
      changes.reduce((text, [choice, piece]) => changedLines(text, choice, piece), stringify(base)),
    );
  return fc.oneof(
    { arbitrary: document.map((each) => JSON.stringify(each) ?? ""), weight: 8 },
    { arbitrary: document.map((each) => stringify(each, { aliasDuplicateObjects: false })), weight: 1 },
    { arbitrary: yaml, weight: 2 },
  );
}
