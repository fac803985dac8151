import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../../src/project-root.js";
import { glossary } from "../../../src/report/words/glossary.js";

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );

/** What readers see: templates whole, and of code the texts in quotes. */
function textsOf(path: string): string {
  const content = readFileSync(path, "utf8");
  if (!path.endsWith(".ts")) return content;
  const code = content.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");
  return [...code.matchAll(/"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g)].map(([text]) => text).join("\n");
}

const own = join("src", "report", "words", "glossary.ts");
const sources = ["src", "views"]
  .flatMap((folder) => filesUnder(join(projectRoot, folder)))
  .filter((path) => /\.(ts|hbs)$/.test(path) && !path.endsWith(own));

describe("the glossary", () => {
  it("has at most sixty terms, each once and each with a meaning", () => {
    const terms = glossary.map(({ term }) => term);
    expect(terms.length).toBeGreaterThan(20);
    expect(terms.length).toBeLessThanOrEqual(60);
    expect(new Set(terms).size).toBe(terms.length);
    for (const { meaning } of glossary) expect(meaning).toMatch(/^[A-Z\d].*\.$/);
  });

  it("finds a word in the texts of code, not in its comments", () => {
    const path = join(projectRoot, "src", "report", "words", "likelihood.ts");
    expect(textsOf(path)).toContain("less likely than not");
    expect(textsOf(path)).not.toContain("as people count them");
  });

  it.each(glossary.flatMap(({ term, replaced }) => replaced.map((word) => [word, term] as const)))(
    "has “%s” replaced by “%s” in templates and texts",
    (word) => {
      const found = sources.filter((path) => textsOf(path).toLowerCase().includes(word.toLowerCase()));
      expect(found.map((path) => relative(projectRoot, path))).toEqual([]);
    },
  );
});
