import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../src/project-root.js";

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );
}

const read = (path: string) => readFileSync(path, "utf8");
const code = (path: string) => read(path).replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "");
const model = filesUnder(join(projectRoot, "src", "model")).filter((path) => path.endsWith(".ts"));

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

  it("loads nothing that is worked out for print alone", () => {
    const traced = join(projectRoot, "src", "study", "traced");
    expect(loadedBy(join(projectRoot, "src", "study", "prepare", "compute.ts"))).toContain(
      join(traced, "traced.ts"),
    );
    expect([...loaded].filter((path) => path.startsWith(traced))).toEqual([]);
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

describe("the views", () => {
  const longest = 160;
  const views = filesUnder(join(projectRoot, "views")).filter((path) => /\.(?:hbs|css)$/.test(path));

  it("have no line that is longer than a screen is wide", () => {
    expect(views.length).toBeGreaterThan(50);
    const long = views.flatMap((path) =>
      read(path)
        .split("\n")
        .flatMap((line, index) =>
          line.length > longest ? [`${relative(projectRoot, path)}:${index + 1}`] : [],
        ),
    );
    expect(long).toEqual([]);
  });
});

/** Pages for people: the two at the root, and the notes, results and changes that stand where they apply. */
const pages = [
  "README.md",
  "DEVELOPERS.md",
  ...["src", "tests"]
    .flatMap((folder) => filesUnder(join(projectRoot, folder)))
    .filter((path) => /[\\/](?:NOTES|RESULTS|CHANGES)\.md$/.test(path))
    .map((path) => relative(projectRoot, path).split(sep).join("/")),
];

const everyFile = ["src", "tests", "views", "assumptions"]
  .flatMap((folder) => filesUnder(join(projectRoot, folder)))
  .map((path) => relative(projectRoot, path).split(sep).join("/"));

/** True for what is written like a place of the project: below a folder of its root, or a file of its code by its name. */
const isPlace = (name: string) => /^(?:src|views|assumptions|tests)\/|\.(?:ts|hbs|css|md)$/.test(name);

/** True for a place below the root, or for a file that stands somewhere below the folder of the page that names it. */
function isThere(name: string, page: string): boolean {
  const folder = page.includes("/") ? page.slice(0, page.lastIndexOf("/") + 1) : "";
  return (
    existsSync(join(projectRoot, name)) ||
    everyFile.some((path) => path.startsWith(folder) && path.endsWith(`/${name}`))
  );
}

describe("the project's pages", () => {
  const packageFile = JSON.parse(read(join(projectRoot, "package.json"))) as {
    scripts: Record<string, string>;
  };

  it.each(pages)("%s names only commands that exist", (page) => {
    const named = [...read(join(projectRoot, page)).matchAll(/npm\s+run\s+(?:-\S+\s+)*([a-z-]+)/g)];
    for (const [, name = ""] of named) expect(Object.keys(packageFile.scripts)).toContain(name);
  });

  it.each(pages)("%s names only files and folders that exist", (page) => {
    const places = [...read(join(projectRoot, page)).matchAll(/`([\w.-]+(?:\/[\w.-]*)*)`|\]\(([^)#:]+)\)/g)];
    const named = places.map(([, quoted, linked]) => quoted ?? linked ?? "");
    expect(named.filter((name) => isPlace(name) && !isThere(name, page))).toEqual([]);
  });

  it("would be found naming what does not exist", () => {
    expect(isPlace("src/model/none.ts") && isThere("src/model/none.ts", "DEVELOPERS.md")).toBe(false);
    expect(isPlace("none.ts") && isThere("none.ts", "src/model/NOTES.md")).toBe(false);
    expect(isPlace("tests/none/") && isThere("tests/none/", "README.md")).toBe(false);
    expect(isThere("plan.ts", "src/model/NOTES.md")).toBe(true);
    expect(isThere("plan.ts", "src/store/NOTES.md")).toBe(false);
  });

  it("have every note in the index of DEVELOPERS.md, which a person can read in one go", () => {
    const index = read(join(projectRoot, "DEVELOPERS.md"));
    expect(pages.length).toBeGreaterThan(20);
    expect(
      pages.filter((page) => page !== "DEVELOPERS.md" && page !== "README.md" && !index.includes(page)),
    ).toEqual([]);
    expect(index.trimEnd().split("\n").length).toBeLessThanOrEqual(150);
  });

  it("README.md can be read in one go, too", () => {
    const lines = read(join(projectRoot, "README.md")).trimEnd().split("\n");
    expect(lines.length).toBeLessThanOrEqual(120);
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
