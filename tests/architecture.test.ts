import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../src/report/assets.js";

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );
}

const read = (path: string) => readFileSync(path, "utf8");
const code = (path: string) => read(path).replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "");
const model = filesUnder(join(projectRoot, "src", "model"));

/** Files whose decimals are the constants of a published formula, named in the comment beside them. */
const formulaFiles = ["friction.ts", "hazen-williams.ts", "rack.ts", "drying.ts", "normal-quantile.ts"];

describe("the model", () => {
  it.each(model)("%s is pure: no clock, no chance, no environment", (path) => {
    expect(code(path)).not.toMatch(/Math\.random|\bDate\b|\bprocess\b|\bperformance\b|node:/);
  });

  it.each(model.filter((path) => !formulaFiles.some((name) => path.endsWith(name))))(
    "%s holds no coefficient: decimals belong in assumptions/",
    (path) => {
      expect(code(path).replace(/\b1e-?\d+\b/g, "")).not.toMatch(/\b\d+\.\d+\b/);
    },
  );
});

describe("the project's pages", () => {
  const packageFile = JSON.parse(read(join(projectRoot, "package.json"))) as {
    scripts: Record<string, string>;
  };

  it.each(["README.md", "DEVELOPERS.md"])("%s names only commands that exist", (page) => {
    const named = [...read(join(projectRoot, page)).matchAll(/npm run ([a-z-]+)/g)].map(
      (match) => match[1] ?? "",
    );
    for (const name of named) expect(Object.keys(packageFile.scripts)).toContain(name);
  });

  it.each(["README.md", "DEVELOPERS.md"])("%s names only paths that exist", (page) => {
    const named = [
      ...read(join(projectRoot, page)).matchAll(/`((?:src|views|assumptions|tests)\/[\w./-]*)`/g),
    ];
    for (const [, path = ""] of named) expect(existsSync(join(projectRoot, path)), path).toBe(true);
  });

  it("DEVELOPERS.md gives a reason for every dependency beyond the agreed ones", () => {
    const agreed = ["express", "handlebars", "chart.js", "decimal.js", "zod", "puppeteer", "vitest"];
    const { dependencies } = JSON.parse(read(join(projectRoot, "package.json"))) as {
      dependencies: Record<string, string>;
    };
    const page = read(join(projectRoot, "DEVELOPERS.md"));
    for (const name of Object.keys(dependencies)) {
      if (!agreed.includes(name)) expect(page).toContain(name);
    }
  });
});
