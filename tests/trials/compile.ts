import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { TestProject } from "vitest/node";

const compiler = join(
  dirname(createRequire(import.meta.url).resolve("typescript/package.json")),
  "bin",
  "tsc",
);

/** Compiles the trials before any test, for those that start a process of a trial's own. */
export function setup({ config }: TestProject): void {
  const { status, stdout } = spawnSync(process.execPath, [compiler, "-p", ".tsconfig.trials.json"], {
    cwd: config.root,
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`The trials do not compile. ${stdout}`);
}
