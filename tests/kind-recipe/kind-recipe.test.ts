import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { structureKinds } from "../../src/model/structures/kinds.js";
import { projectRoot } from "../../src/project-root.js";

/** Source files of the recipe, as DEVELOPERS.md names them. */
const list = "src/model/structures/kinds.ts";
const schemas = "src/study/format/structure-schema.ts";
const folder = "src/model/structures/kinds/";

let copy = "";
let answers: Record<string, never> = {};

/** Puts a text in the place of another that stands there once. */
function replace(file: string, before: string, after: string): void {
  const path = join(copy, file);
  const text = readFileSync(path, "utf8");
  if (text.split(before).length !== 2) throw new Error(`${file} does not hold "${before}" once`);
  writeFileSync(path, text.replace(before, after));
}

/** A file beside this one, put into the copy with its imports as they are there. */
function put(name: string, to: string, from: string, here: string): void {
  const text = readFileSync(join(projectRoot, "tests/kind-recipe", name), "utf8");
  writeFileSync(join(copy, to), text.replaceAll(from, here));
}

function addKind(): void {
  put("hatchery-line.ts", `${folder}hatchery-line.ts`, "../../src/model/structures/", "../");
  replace(
    list,
    "import { hydropower }",
    'import { hatcheryLine } from "./kinds/hatchery-line.js";\nimport { hydropower }',
  );
  replace(list, "  lakeWide,\n]", "  lakeWide,\n  hatcheryLine,\n]");
  replace(
    schemas,
    "export const structureSchema",
    `const hatcheryLine = z.strictObject({
  kind: z.literal("hatchery-line"),
  ...base,
  elevation: quantity("elevation"),
  ...pipeFields,
  ...lineFields,
  fishLossPerDay: quantity("moneyPerDay"),
});

export const structureSchema`,
  );
  replace(schemas, "  lakeWide,\n]", "  lakeWide,\n  hatcheryLine,\n]");
}

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), "kind-recipe-"));
  for (const part of ["src", "assumptions", "views", "tsconfig.json", "package.json"]) {
    cpSync(join(projectRoot, part), join(copy, part), { recursive: true });
  }
  symlinkSync(join(projectRoot, "node_modules"), join(copy, "node_modules"));
  addKind();
  put("answers.ts", "src/cli/answers.ts", "../../src/", "../");
  const run = (...words: string[]) =>
    execFileSync(process.execPath, words, { cwd: copy, encoding: "utf8", maxBuffer: 2 ** 26 });
  // One thread: several check much of it twice.
  run(join(projectRoot, "node_modules/typescript/bin/tsc"), "-p", "tsconfig.json", "--singleThreaded");
  answers = JSON.parse(run("dist/cli/answers.js"));
});

afterAll(() => rmSync(copy, { recursive: true, force: true }));

describe("a kind of structure added by the recipe of DEVELOPERS.md", () => {
  it("takes the three files that it names", () => {
    const recipe = /\*\*A kind of structure\*\*.*?\*\*A protection plan/s.exec(
      readFileSync(join(projectRoot, "DEVELOPERS.md"), "utf8"),
    )?.[0];
    for (const file of [folder, list, schemas]) expect(recipe).toContain(file);
  });

  it("fouls and is registered", () => {
    expect(answers.parts).toEqual([{ name: "supply line", fouls: true }]);
    // 12 in and 900 ft as entered
    expect(answers.register).toEqual(
      expect.arrayContaining(["Trout hatchery", "hatchery line", "12 in × 900 ft"]),
    );
  });

  it("is in the elevation drawing, the pipe table and the pictures of levels", () => {
    expect(answers.drawing).toContain("Trout hatchery");
    expect(answers.pipes).toEqual(
      expect.arrayContaining([expect.stringMatching(/^Trout hatchery, supply line: 4.* cfs through 900 ft/)]),
    );
    expect(answers.places).toContain("Trout hatchery");
    expect(answers.picture).toContain("Trout hatchery");
  });

  it("is named where other levels leave it above the lake", () => {
    // It stands at 2,095 ft; the deeper drawdown of the example goes down to 2,088 ft.
    expect(answers.cautions).toEqual([expect.stringContaining("Trout hatchery")]);
  });

  it("has a form and a table to paste", () => {
    expect(answers.form).toEqual(expect.arrayContaining(["Elevation", "Required flow", "Fish loss per day"]));
    expect(answers.template).toContain("roughness (in)");
    expect(answers.table).toEqual([
      expect.objectContaining({
        name: "Table hatchery",
        problems: [],
        structure: expect.objectContaining({ kind: "hatchery-line", fishLossPerDay: "$900/d" }),
      }),
    ]);
  });

  it("is held to what every inlet and pipe must keep, and is named among the kinds", () => {
    expect(answers.aboveLake).toEqual([expect.stringMatching(/hatchery.*elevation$/)]);
    expect(answers.tooFast).toEqual([expect.stringMatching(/hatchery.*diameter$/)]);
    expect(answers.unknownKind).toEqual([expect.stringContaining("lake-wide or hatchery-line")]);
  });
});

describe("the kind of a structure", () => {
  const names = structureKinds.map(({ kind }) => kind).join("|");
  const asked = new RegExp(`(?:\\bcase|[!=]==) "(?:${names})"`);
  const paths = ["docks", "duties", "hatchery", "lines", "racks", "ramps", "sprinklers", "treatment"];
  /** The worked example is of one intake and one plant, and each path of kinds for which it is written. */
  const written = [...paths.map((path) => `paths/${path}`), "worked-example"].map(
    (each) => `src/method/${each}.ts`,
  );

  it.each(['case "dock":', 'kind === "lake-wide"', 'kind !== "hydropower"'])("is asked for by %s", (code) => {
    expect(code).toMatch(asked);
  });

  it("is not asked for in src: what differs is a property of its object", () => {
    const files = readdirSync(join(projectRoot, "src"), { recursive: true, encoding: "utf8" })
      .filter((path) => path.endsWith(".ts"))
      .map((path) => join("src", path));
    const asking = files.filter((path) => asked.test(readFileSync(join(projectRoot, path), "utf8")));
    expect(asking.sort()).toEqual(written);
  });
});
