import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, it } from "vitest";
import { projectRoot } from "../../src/project-root.js";

const folder = join(projectRoot, "tests", "trials");

it("a trial names what it tries as #product, and beside that only files that are compiled with it", () => {
  const trials = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter(
    (path) => path.endsWith(".ts") && !path.endsWith(".test.ts"),
  );
  const named = trials.flatMap((path) =>
    [...readFileSync(join(folder, path), "utf8").matchAll(/\bfrom "(\.[^"]+)\.js"/g)].map(
      ([, from = ""]) => ({
        path,
        names: `${join(dirname(path), from)}.ts`,
      }),
    ),
  );
  expect(named.map(({ names }) => names)).toContain("busy/runs.ts");
  expect(named.filter(({ names }) => !trials.includes(names))).toEqual([]);
});
