import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { projectRoot } from "../../src/project-root.js";
import { folder } from "./places.js";

const moduleOf = (name: string) => JSON.stringify(join(projectRoot, "dist", "store", `${name}.js`));

/** Nothing of machine code can be loaded, and no folder made in which it could be fetched or compiled. */
const without = `import fs from "node:fs";
  import { syncBuiltinESMExports } from "node:module";
  process.dlopen = fs.mkdtempSync = () => { throw new Error("refused"); };
  syncBuiltinESMExports();`;

it.each<[string, string, string, string]>([
  ["a new database", "open-database", "openDatabase", "studies.sqlite"],
  ["a backup", "open-database", "openAsItIs", "backup.sqlite"],
  ["the lock of a folder", "serving-lock", "lockForServing", ""],
])("without the native part %s is refused, and no file is left that looks damaged later", (...row) => {
  const [, module, open, name] = row;
  const place = folder();
  const script = `${without}
    const { ${open} } = await import(${moduleOf(module)});
    const { PlainError } = await import(${JSON.stringify(join(projectRoot, "dist", "plain-error.js"))});
    try { ${open}(${JSON.stringify(join(place, name))}); }
    catch (error) { console.log(error instanceof PlainError, error.message); }`;
  const { stdout } = spawnSync(process.execPath, ["--input-type=module", "-e", script], {
    ...{ encoding: "utf8", env: { ...process.env, PATH: "" } },
  });
  expect(stdout).toMatch(/^true .*a network, a C\+\+ compiler, or your right to write in .*node_modules/);
  expect(readdirSync(place)).toEqual([]);
});
