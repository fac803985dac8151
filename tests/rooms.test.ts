import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../src/project-root.js";

const source = join(projectRoot, "src");

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );

/** Paths within src, with strokes. */
const named = (path: string) => relative(source, path).split(sep).join("/");

const files = filesUnder(source).filter((path) => path.endsWith(".ts"));

/** Every file that another names in an import or an export, of types as well, also one that is loaded while it runs. */
function importsOf(path: string): string[] {
  const code = readFileSync(path, "utf8").replace(/\/\*[\s\S]*?\*\//g, "");
  const declared = code.matchAll(
    /^(?:import|export)\b[^;"]*?\bfrom\s+"(\.[^"]+)"|^import "(\.[^"]+)"|\bimport\("(\.[^"]+)"\)/gm,
  );
  return [...declared].map(([, ...from]) =>
    named(join(dirname(path), from.join("").replace(/\.js$/, ".ts"))),
  );
}

const graph = new Map(files.map((path) => [named(path), importsOf(path)]));

const roomOf = (path: string) => path.split("/")[0] ?? "";

/** Files that belong to no room. */
const leaves = ["counted.ts", "lists.ts"];
const outside = ["plain-error.ts", "project-root.ts"];
const study = [...leaves, ...outside, "model", "units", "assumptions"];
const report = [...study, "study"];
const app = [...report, "workers", "store", "editor", "odds", "report", "method", "forms", "issue"];

/** What each room may import beside itself. The rooms of `src` from the innermost to the outermost. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  "counted.ts": [],
  "lists.ts": [],
  "plain-error.ts": [],
  "project-root.ts": [],
  model: leaves,
  units: [],
  store: outside,
  workers: [],
  assumptions: ["lists.ts", ...outside, "model", "units"],
  study,
  editor: report,
  odds: [...report, "workers"],
  report,
  forms: [...report, "report"],
  method: [...report, "report"],
  issue: [...report, "report", "method"],
  app,
  cli: [...app, "app"],
  web: [...app, "app"],
};

describe("the rooms of src", () => {
  it("are all named here", () => {
    expect([...new Set([...graph.keys()].map(roomOf))].sort()).toEqual(Object.keys(allowed).sort());
  });

  it.each(Object.entries(allowed))("%s imports inward alone", (room, inner) => {
    const outward = [...graph]
      .filter(([path]) => roomOf(path) === room)
      .flatMap(([path, imports]) =>
        imports
          .filter((each) => roomOf(each) !== room && !inner.includes(roomOf(each)))
          .map((each) => `${path} imports ${each}`),
      );
    expect(outward).toEqual([]);
  });

  it("hold at most 30 files in a folder", () => {
    const counts = new Map<string, number>();
    for (const path of graph.keys()) counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1);
    expect([...counts].filter(([, count]) => count > 30)).toEqual([]);
  });
});

/** Files that import one another, in a circle or several that share files. */
function circles(): string[][] {
  const reached = new Map([...graph.keys()].map((path) => [path, reachedFrom(path)]));
  const found = new Map<string, string[]>();
  for (const path of graph.keys()) {
    if (!reached.get(path)?.has(path)) continue;
    const circle = [...(reached.get(path) ?? [])].filter((each) => reached.get(each)?.has(path)).sort();
    found.set(circle.join(), circle);
  }
  return [...found.values()];
}

function reachedFrom(start: string): Set<string> {
  const reached = new Set<string>();
  const open = [...(graph.get(start) ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (reached.has(next)) continue;
    reached.add(next);
    open.push(...(graph.get(next) ?? []));
  }
  return reached;
}

describe("imports between files, those of types counted", () => {
  it("are read from every declaration", () => {
    expect(graph.get("web/serve.ts")).toContain("web/app.ts");
    expect(graph.get("app/answers/worker.ts")).toContain("app/answers/papers.ts");
    expect([...graph.values()].flat().every((path) => graph.has(path))).toBe(true);
  });

  it("make no circle", () => {
    expect(circles()).toEqual([]);
  });
});

/** What a declaration takes from another file beside types: nothing of `import type`, or of names that all are types. */
function takesValues(declaration: string): boolean {
  const [, type, names] = /^(?:import|export)\s+(type\s)?([\s\S]*?)\s*from\b/.exec(declaration) ?? [];
  if (type !== undefined) return false;
  const listed = /^\{([\s\S]*)\}$/.exec(names ?? "")?.[1];
  return listed === undefined || listed.split(",").some((name) => /^\s*(?!type\s)\S/.test(name));
}

/** Every file of which a file takes values, also by loading it while it runs. */
function valuesOf(path: string): string[] {
  const code = readFileSync(join(source, path), "utf8").replace(/\/\*[\s\S]*?\*\//g, "");
  const declared = [...code.matchAll(/^(?:import|export)\b[^;"]*?\bfrom\s+"(\.[^"]+)"/gm)]
    .filter(([declaration]) => takesValues(declaration))
    .map(([, from = ""]) => from);
  const others = [...code.matchAll(/^import "(\.[^"]+)"|\bimport\("(\.[^"]+)"\)/gm)].map(([, ...from]) =>
    from.join(""),
  );
  return [...declared, ...others].map((from) =>
    named(join(dirname(join(source, path)), from.replace(/\.js$/, ".ts"))),
  );
}

/** What words and rounds results: it works out no figure that another has not worked out. */
const tellers = ["report", "forms"];

/** All of which tellers may take values beside each other: names, constants, and texts of what was read. */
const told: readonly string[] = [
  ...leaves,
  "assumptions/entry-marks.ts",
  "assumptions/units.ts",
  "assumptions/version.ts",
  "model/lake/calendar.ts",
  "model/money/decimal.ts",
  "model/uncertainty/reach.ts",
  "plain-error.ts",
  "project-root.ts",
  "study/compared/figures.ts",
  "study/format/report-schema.ts",
  "study/odds/odds.ts",
  "study/reading/characters.ts",
  "study/reading/confirmed.ts",
  "study/reading/level-dates.ts",
  "study/reading/problems.ts",
  "study/reading/ranged.ts",
  "study/short/typical-places.ts",
  "units/dimensions.ts",
  "units/quantity.ts",
];

describe("the report and its forms", () => {
  it.each([
    ['import type { Comparison } from "a"', false],
    ['import { type Comparison, type Money } from "a"', false],
    ['import { type Comparison, compare } from "a"', true],
    ['import {\n  at,\n  type Money,\n} from "a"', true],
    ['import * as model from "a"', true],
    ['import model from "a"', true],
    ['export { compare } from "a"', true],
    ['export type { Comparison } from "a"', false],
  ])("takes values where %j is %s", (declaration, isSo) => {
    expect(takesValues(declaration)).toBe(isSo);
  });

  it("take types alone from what computes; see src/study/traced/traced.ts for what they tell", () => {
    const computing = [...graph.keys()]
      .filter((path) => tellers.includes(roomOf(path)))
      .flatMap((path) =>
        valuesOf(path)
          .filter((each) => !tellers.includes(roomOf(each)) && !told.includes(each))
          .map((each) => `${path} takes values of ${each}`),
      );
    expect(computing).toEqual([]);
  });

  it("need every file of that list", () => {
    const taken = new Set(
      [...graph.keys()].filter((path) => tellers.includes(roomOf(path))).flatMap(valuesOf),
    );
    expect(told.filter((path) => !taken.has(path))).toEqual([]);
  });
});
