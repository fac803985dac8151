import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { examplesFolder } from "../../../src/report/document/assets.js";
import { nameInText, renamedText } from "../../../src/study/reading/name-in-text.js";

describe("the name in a text", () => {
  it.each([
    ["study:\n  name: Our lake # ours", "Our lake"],
    ['{"study": {"name": " Our lake "}}', "Our lake"],
    ["study: { name: 'Our lake' }\nlake: [", "Our lake"],
  ])("of %j is found, complete or not", (text, name) => {
    expect(nameInText(text)).toBe(name);
  });

  it.each(["", "study:", "study: { name: 3 }", "study: { name: '' }", "- 1", "study: [", "\u0000"])(
    "of %j is absent",
    (text) => {
      expect(nameInText(text)).toBeUndefined();
    },
  );
});

describe("renaming", () => {
  it.each([
    [
      "\ufeffstudy:\r\n  name: Our lake   # ours\r\nlake: 1",
      '\ufeffstudy:\r\n  name: "A \\"new\\" 湖"   # ours\r\nlake: 1',
    ],
    ['{"study":{"name":"Our lake"}, "x":1}', '{"study":{"name":"A \\"new\\" 湖"}, "x":1}'],
  ])("of %j changes the name and no other byte", (text, renamed) => {
    expect(renamedText(text, 'A "new" 湖')).toBe(renamed);
    expect(nameInText(renamed)).toBe('A "new" 湖');
  });

  it("leaves all other lines of an example as they are", () => {
    const text = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
    const lines = renamedText(text, "Mine").split("\n");
    const changed = text.split("\n").filter((line, index) => line !== lines[index]);
    expect(changed).toEqual(["  name: Ninemoss Lake, inspection program request"]);
  });

  it.each(["lake: 1", "study:\n  name: |\n    Our lake\nlake: 1"])("leaves %j alone", (text) => {
    expect(renamedText(text, "New")).toBe(text);
  });
});
