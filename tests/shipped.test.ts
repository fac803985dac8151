import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../src/project-root.js";

const source = join(projectRoot, "src");

const { dependencies } = JSON.parse(readFileSync(join(projectRoot, "package.json"), "utf8")) as {
  dependencies: Record<string, string>;
};

const named =
  /^(?:import|export)\b[^;"]*?\bfrom\s+"([^"]+)"|^import "([^"]+)"|\b(?:import|require(?:\.resolve)?)\(\s*"([^"]+)"/gm;

/** What a text of code imports, of types as well, finds or loads while it runs. */
const importsOf = (code: string): string[] =>
  [...code.replace(/\/\*[\s\S]*?\*\//g, "").matchAll(named)].map(([, ...from]) => from.join(""));

/** "csv-parse" of "csv-parse/sync", "@cantoo/pdf-lib" of itself. */
const packageOf = (specifier: string) => /^(?:@[^/]+\/)?[^/]+/.exec(specifier)?.[0] ?? "";

const outside = readdirSync(source, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".ts"))
  .flatMap((path) => importsOf(readFileSync(join(source, path), "utf8")).map((from) => ({ path, from })))
  .filter(({ from }) => !from.startsWith(".") && !from.startsWith("node:"));

describe("what is compiled into dist", () => {
  it.each([
    ['import fc from "fast-check";', "fast-check"],
    ['import {\n  one,\n  other,\n} from "vitest/node";', "vitest"],
    ['import type { Options } from "@stryker-mutator/api/core";', "@stryker-mutator/api"],
    ['import "axe-core";', "axe-core"],
    ['export { jStat } from "jstat";', "jstat"],
    ['const loaded = await import("jstat");', "jstat"],
    ['const file = require.resolve("axe-core/axe.min.js");', "axe-core"],
    ['import { compare } from "#product/model/compare.js";', "#product"],
  ])("would be found to import by %j", (code, name) => {
    expect(importsOf(code).map(packageOf)).toEqual([name]);
    expect(Object.keys(dependencies)).not.toContain(name);
  });

  it("needs no package that an install without development packages lacks", () => {
    const lacking = outside.filter(({ from }) => !(packageOf(from) in dependencies));
    expect(lacking).toEqual([]);
  });

  it("needs every package that is installed with it; fonts are found by names put together", () => {
    const needed = new Set(outside.map(({ from }) => packageOf(from)));
    const idle = Object.keys(dependencies).filter((name) => !needed.has(name));
    expect(idle.filter((name) => !name.startsWith("@fontsource/"))).toEqual([]);
  });
});
