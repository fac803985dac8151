import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draftOf } from "../../../src/editor/draft.js";
import { forXml, isPrintable, unseenIn } from "../../../src/study/reading/characters.js";
import { InputError } from "../../../src/study/reading/problems.js";
import { readIssuedText, readStudyText } from "../../../src/study/reading/read.js";
import { exampleDocument, put } from "../example.js";

/** Any run of 16-bit units, halves of characters among them. */
const anyUnits = fc
  .array(
    fc.oneof(
      { arbitrary: fc.integer({ min: 0, max: 0xffff }), weight: 3 },
      {
        arbitrary: fc.constantFrom(0, 7, 9, 10, 13, 0x7f, 0x85, 0x9f, 0xd800, 0xdfff, 0xfffe, 0xffff),
        weight: 2,
      },
    ),
    { maxLength: 30 },
  )
  .map((units) => String.fromCharCode(...units));

/** Production 2 of https://www.w3.org/TR/xml/#charsets, number by number. */
const isChar = (code: number): boolean =>
  [0x9, 0xa, 0xd].includes(code) ||
  (code >= 0x20 && code <= 0xd7ff) ||
  (code >= 0xe000 && code <= 0xfffd) ||
  (code >= 0x10000 && code <= 0x10ffff);

const codesOf = (text: string) => Array.from(text, (each) => each.codePointAt(0) ?? 0);

describe("a text for XML", () => {
  it("holds what such a document may hold, and that unchanged", () => {
    fc.assert(
      fc.property(anyUnits, (text) => {
        const safe = codesOf(forXml(text));
        expect(safe.every(isChar)).toBe(true);
        expect(safe).toEqual(codesOf(text).map((code) => (isChar(code) ? code : 0xfffd)));
      }),
      { seed: 71, numRuns: 500 },
    );
  });

  it("may be any text that is taken as a name", () => {
    fc.assert(
      fc.property(anyUnits, (text) => {
        if (isPrintable(text)) expect(forXml(text)).toBe(text);
        expect(unseenIn(text) === undefined).toBe(isPrintable(text));
      }),
      { seed: 72, numRuns: 500 },
    );
  });
});

describe("a character that cannot be printed", () => {
  it.each([
    ["Nort\u0007h", "U+0007 at character 5"],
    ["🦪\ud800", "U+D800 at character 2"],
    ["\ufffe", "U+FFFE at character 1"],
    ["a\u0080", "U+0080 at character 2"],
    ["one\ntw\u0000o", "U+0000 at character 3 of line 2"],
  ])("is told by its code and place: %j", (text, told) => {
    expect(unseenIn(text)).toBe(told);
  });

  it.each(["Nord\u00a0See", "é", "e\u0301", "🦪", "א", "a\u200db", "line\nline\tcell", "\ufeff", "\ufffd"])(
    "is none of %j",
    (text) => {
      expect(unseenIn(text)).toBeUndefined();
    },
  );

  const places = ["study.name", "lake.name", "options[full-season].name", "money.bearers[city].name"];
  const broken = (place: string, text = "Nort\u0007h"): string => {
    const document = exampleDocument();
    put(document, place, text);
    return JSON.stringify(document);
  };

  it.each(places)("is refused in %s, and the study opens in the editor with that told", (place) => {
    const refused = () => readStudyText(broken(place), "lake.json");
    expect(refused).toThrow(InputError);
    expect(refused).toThrow("found U+0007 at character");
    expect(refused).toThrow("Take that character out.");
    const { document, problems } = draftOf(broken(place), "lake.json");
    expect(problems.map(({ found }) => found)).toEqual(["U+0007 at character 5"]);
    expect(problems[0]?.path).toContain(place.split(/[[.]/)[0]);
    expect(document).toEqual(JSON.parse(broken(place)));
  });

  it("is told once where a field refuses it by itself, and in a document that holds itself", () => {
    expect(draftOf(broken("study.units", "u\u0007s"), "lake.json").problems).toMatchObject([
      { path: "study.units", found: 'U+0007 at character 2 of "u\ufffds"', allowed: "one of us, si" },
    ]);
    const own = draftOf('study: &a { name: "N\\x07", own: *a }', "lake.yaml");
    expect(own.problems.filter(({ found }) => found.startsWith("U+0007"))).toHaveLength(1);
  });

  it("does not keep an issued report of then from being read", () => {
    expect(readIssuedText(broken("study.name"), "lake.json").study.name).toBe("Nort\u0007h");
  });
});
