import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { projectRoot } from "../../src/project-root.js";

/** A copy of the project as it was built, its packages those of the project. */
const root = mkdtempSync(join(tmpdir(), "ramp-and-rack-built-"));
for (const name of ["dist", "views", "assumptions", "package.json", join("src", "assumptions")])
  cpSync(join(projectRoot, name), join(root, name), { recursive: true });
symlinkSync(join(projectRoot, "node_modules"), join(root, "node_modules"));
const views = join(root, "dist", "report", "document", "compiled-views.json");
const assumptions = join(root, "dist", "assumptions", "read-at-build.json");

afterAll(() => rmSync(root, { recursive: true }));

const keep = () => {
  execFileSync(process.execPath, [join(root, "dist", "cli", "keep-at-build.js")]);
  return { views: readFileSync(views, "utf8"), assumptions: readFileSync(assumptions, "utf8") };
};

it("a view that is no template is left out, and ends no build", () => {
  const before = keep();
  writeFileSync(join(root, "views", "broken.hbs"), "{{#each rows}}");
  expect(keep()).toEqual(before);
});

it("views are put in place whole, for a command that starts meanwhile", () => {
  const before = statSync(views).ino;
  keep();
  expect(statSync(views).ino).not.toBe(before);
});
