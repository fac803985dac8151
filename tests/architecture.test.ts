import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../src/report/document/assets.js";

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
      const numbers = code(path).replace(/\b1e-?\d+\b|"[a-z-]+\.[a-z0-9.-]+"/g, "");
      expect(numbers).not.toMatch(/\b\d+\.\d+\b/);
    },
  );
});

/** Every file and package that a file loads when it runs; imports of types are gone by then. */
function loadedBy(path: string, known = new Set<string>()): Set<string> {
  known.add(path);
  const values = code(path).replace(/^(?:import|export) type [^;]*;/gm, "");
  for (const [, from = ""] of values.matchAll(/^(?:import|export)[^;]*? from "([^"]+)"/gm)) {
    const loaded = from.startsWith(".") ? join(dirname(path), from.replace(/\.js$/, ".ts")) : from;
    if (known.has(loaded)) continue;
    if (from.startsWith(".")) loadedBy(loaded, known);
    else known.add(loaded);
  }
  return known;
}

describe("a worker that draws futures", () => {
  const loaded = loadedBy(join(projectRoot, "src", "odds", "worker.ts"));

  it("loads the model", () => {
    expect(loaded).toContain(join(projectRoot, "src", "model", "structures", "upkeep.ts"));
  });

  it("loads no schemas: it is given studies that were read, and schemas take most of a worker's memory", () => {
    expect(loadedBy(join(projectRoot, "src", "study", "format", "schema.ts"))).toContain("zod");
    expect(loaded).not.toContain("zod");
  });
});

describe("a test", () => {
  const left = /\b(?:describe|it|test)(?:\.\w+)*\.(?:skip|skipIf|runIf|only|todo)\b/;
  const clock = /performance\.now\(|Date\.now\(|timers\/promises/;

  it.each(["it.skip(", "describe.runIf(", "it.each.only("])("that begins with %s would be found", (start) => {
    expect(start).toMatch(left);
  });

  it("runs on every machine, and asks no clock how long something took", () => {
    const files = filesUnder(join(projectRoot, "tests")).filter((path) => path.endsWith(".test.ts"));
    expect(files.length).toBeGreaterThan(100);
    const own = join(projectRoot, "tests", "architecture.test.ts");
    const found = files.filter((path) => path !== own && (left.test(code(path)) || clock.test(code(path))));
    expect(found).toEqual([]);
  });
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
