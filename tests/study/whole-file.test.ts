import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { InputError, sentence } from "../../src/study/reading/problems.js";
import { largestStudyBytes, readStudyFile, readStudyText } from "../../src/study/reading/read.js";
import { processorMilliseconds } from "../trials/fuzz/fault.js";
import { exampleText, inputErrorOf, problemsIn, wordsOfTheProgram } from "./example.js";

const badFile = (name: string) => fileURLToPath(new URL(`../bad/study/${name}`, import.meta.url));

/** Each malformed file with the place that its message names, and words of what was found and is allowed. */
const badFiles = [
  ["empty.yaml", "the file", "nothing", "JSON or YAML"],
  ["comment-only.yaml", "the document", "nothing", "a group of fields"],
  ["list-at-root.yaml", "the document", "a list of 2", "a group of fields"],
  ["text-at-root.yaml", "the document", "one sentence", "a group of fields"],
  ["broken-yaml.yaml", "line 3", "Flow sequence", "JSON or YAML"],
  ["tab-indent.yaml", "line 2", "Tabs", "JSON or YAML"],
  ["broken-json.json", "line 2", "}", "JSON or YAML"],
  ["duplicate-key.yaml", "line 4", "a second time", "each key once in a group"],
  ["two-documents.yaml", "line 3", "multiple documents", "JSON or YAML"],
  ["unknown-alias.yaml", "the file", "elsewhere", "without deep aliases"],
  ["alias-bomb.yaml", "the file", "alias", "without deep aliases"],
] as const;

describe("a file that is no study", () => {
  it.each(badFiles)("%s is told by file, place, found, allowed and remedy", (name, place, found, allowed) => {
    const error = inputErrorOf(() => readStudyFile(badFile(name)));
    const [problem] = error.problems;
    expect(problem?.path).toContain(place);
    expect(problem?.found).toContain(found);
    expect(problem?.allowed).toContain(allowed);
    expect(problem?.remedy).toMatch(/\.$/);
    expect(error.message).toContain(name);
    expect(wordsOfTheProgram(error.message)).toBeUndefined();
  });

  it("is told in few lines even if it is an alias bomb", () => {
    const started = processorMilliseconds();
    const { message } = inputErrorOf(() => readStudyFile(badFile("alias-bomb.yaml")));
    expect(message.split("\n").length).toBeLessThan(5);
    expect(processorMilliseconds() - started).toBeLessThan(2000);
  });

  it.each([
    ["lists", "[".repeat(20_000)],
    ["groups", `${"{a: ".repeat(20_000)}1${"}".repeat(20_000)}`],
  ])("is told once and in words for an author if it nests %s without end", (_what, text) => {
    const { message, problems } = inputErrorOf(() => readStudyText(text, "study.yaml"));
    expect(wordsOfTheProgram(message)).toBeUndefined();
    expect(new Set(problems.map(sentence)).size).toBe(problems.length);
  });
});

describe("a path that leads to no study", () => {
  it.each([
    ["a file that is missing", "missing.yaml"],
    ["a folder", "."],
  ])("such as %s is told with the path", (_what, name) => {
    const path = badFile(name);
    const [problem] = inputErrorOf(() => readStudyFile(path)).problems;
    expect(problem?.found).toBe("no such file");
    expect(problem?.allowed).toContain("a study file");
    expect(problem?.remedy).toContain(path);
  });
});

describe("a file that is too large", () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "large-study-"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it("is refused before it is read, with its size and the largest allowed", () => {
    const path = join(folder, "large.yaml");
    writeFileSync(path, Buffer.alloc(20 * 1024 * 1024, "# a comment that goes on and on\n"));
    const started = processorMilliseconds();
    const error = inputErrorOf(() => readStudyFile(path));
    expect(processorMilliseconds() - started).toBeLessThan(1000);
    expect(error.message).toContain("large.yaml");
    expect(error.problems).toEqual([
      expect.objectContaining({
        path: "the file",
        found: "20.0 MB",
        allowed: `at most ${largestStudyBytes / 1024 / 1024}.0 MB`,
        remedy: expect.stringContaining("right file"),
      }),
    ]);
  });

  it("is refused as well if it arrives as text, counted in bytes", () => {
    const text = `# ${"€".repeat(largestStudyBytes / 2)}`;
    expect(text.length).toBeLessThan(largestStudyBytes);
    expect(problemsIn(text)).toMatchObject([{ found: "3.0 MB" }]);
  });
});

describe("keys that mean something to the language", () => {
  const poisons = [
    ["at the root of YAML", `${exampleText("sorrel-bend")}\n__proto__: { polluted: true }\n`],
    [
      "in a section of YAML",
      exampleText("sorrel-bend").replace(/^lake:$/m, "lake:\n  __proto__: { polluted: true }"),
    ],
    ["as constructor", `${exampleText("sorrel-bend")}\nconstructor: { prototype: { polluted: true } }\n`],
    ["in JSON", '{ "__proto__": { "polluted": true }, "study": { "__proto__": { "polluted": true } } }'],
  ] as const;

  it.each(poisons)("are refused as unknown and change nothing: %s", (_where, text) => {
    const problems = problemsIn(text).filter(({ path }) => /__proto__|constructor/.test(path));
    expect(problems.length).toBeGreaterThan(0);
    expect(problems[0]?.found).toBe("an unknown key");
    expect(Reflect.get({}, "polluted")).toBeUndefined();
  });

  it("are not taken for the sections that they hide", () => {
    const read = () => readStudyText('{ "__proto__": { "study": {}, "lake": {} } }', "study.json");
    expect(read).toThrow(InputError);
    expect(inputErrorOf(read).problems.map(({ path }) => path)).toContain("study");
  });
});
