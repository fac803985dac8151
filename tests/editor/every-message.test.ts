import { describe, expect, it } from "vitest";
import { readExamples } from "../../src/app/examples.js";
import { draftOf } from "../../src/editor/draft.js";
import { problemText } from "../../src/editor/form-node.js";
import type { Problem } from "../../src/study/reading/problems.js";
import { readFacts } from "../../src/study/short/read-facts.js";
import { entries, shortExample } from "../study/short/facts.js";

type Path = readonly (string | number)[];

/** Every place of a document, the groups before what is in them. */
function places(tree: unknown, path: Path = []): Path[] {
  if (typeof tree !== "object" || tree === null) return [path];
  const inner = Object.entries(tree).flatMap(([key, item]) =>
    places(item, [...path, Array.isArray(tree) ? Number(key) : key]),
  );
  return path.length === 0 ? inner : [path, ...inner];
}

function withValue(tree: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const copy = Array.isArray(tree) ? [...tree] : { ...Object(tree) };
  Reflect.set(copy, key, withValue(Reflect.get(Object(tree), key), rest, value));
  return copy;
}

/** One place of each name, so that twelve months and all rows of a list count once. */
const nameOf = (path: Path) =>
  path.map((key) => (typeof key === "number" || /^[a-z]{3}$/.test(key) ? "each" : key)).join("/");

const oneOfEach = (document: unknown): Path[] => [
  ...new Map(places(document).map((path) => [nameOf(path), path])).values(),
];

/** What the page says around what was typed, which stands in quotes. */
const around = (text: string): string => text.replace(/"(?:[^"\\]|\\.)*"|“[^”]*”/g, "“…”");

/** A dotted or numbered place, a key with a capital within, a value of JSON, an id from somewhere. */
const ofTheFile =
  /\b[a-z]+\.[a-z]\w+|\w\[\d|\b(?:true|false|null|undefined|NaN)\b|\b(?!pH\b)[a-z]{2,}[A-Z][a-z]|\bid (?:of|from)\b|\{/;

const wrongWords = (problems: readonly Problem[]): string[] =>
  problems.map(problemText).filter((text) => ofTheFile.test(around(text)));

describe("what is told beside fields, whatever is typed wrong", () => {
  it("speaks the words of the page in every form", () => {
    const seen = new Set<string>();
    // A place that several examples have is tried in the shortest.
    const examples = readExamples().toSorted((one, other) => one.text.length - other.text.length);
    const wrong = examples.flatMap(({ text, fileName }) => {
      const { document } = draftOf(text, fileName);
      const fresh = oneOfEach(document).filter((path) => !seen.has(nameOf(path)));
      for (const path of fresh) seen.add(nameOf(path));
      return fresh.flatMap((path) => {
        const { problems } = draftOf(JSON.stringify(withValue(document, path, "nonsense")), "study.json");
        return wrongWords(problems);
      });
    });
    expect(seen.size).toBeGreaterThan(300);
    expect([...new Set(wrong)]).toEqual([]);
  });

  it("is place, found, allowed and remedy in words of the page on the short path", () => {
    const facts = shortExample("sorrel-bend");
    const told = new Set<string>();
    for (const path of oneOfEach(facts)) {
      for (const value of ["nonsense", "-5", "1,5", "1e30", "12 furlongs"]) {
        const { problems } = readFacts(withValue(facts, path, value), entries);
        expect(wrongWords(problems)).toEqual([]);
        for (const each of problems) {
          told.add(each.path);
          expect(each.at?.length).toBeGreaterThan(0);
          expect([each.found, each.allowed, each.remedy]).not.toContain("");
        }
      }
    }
    // Each fact refuses one of these at the least, so that none is passed over.
    expect(told.size).toBe(oneOfEach(facts).length);
  });
});
