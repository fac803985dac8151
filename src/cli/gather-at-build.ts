import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "../project-root.js";

/** What the engine is started with: commands, server, threads, the process that verifies. */
const starts = ["cli/main", "web/serve", "odds/worker", "app/answers/worker", "app/verify-process"];

/** Packages of many small files, or of code that nearly every start loads. The others stay where they are installed. */
const gathered = ["csv-parse", "csv-stringify", "decimal.js", "js-quantities", "lru-cache", "yaml", "zod"];

const compiled = join(projectRoot, "dist");
const pieces = "pieces";

/**
 * Puts what each start loads into a few files in place of some six hundred, which the engine takes longer to find, open and
 * link than to run. What a command loads when it is called for stays apart.
 */
async function gather(): Promise<void> {
  const { rolldown } = await import("rolldown");
  const bundle = await rolldown({
    input: Object.fromEntries(starts.map((name) => [name, join(compiled, `${name}.js`)])),
    platform: "node",
    external: (name) => name.endsWith("/project-root.js") || (isPackage(name) && !isGathered(name)),
  });
  const { output } = await bundle.write({ dir: compiled, chunkFileNames: `${pieces}/[name]-[hash].js` });
  removeAllBut(new Set(output.map(({ fileName }) => fileName)));
}

const isPackage = (name: string): boolean => !/^[./]|^[A-Za-z]:/.test(name);

const isGathered = (name: string): boolean => gathered.includes(name.split("/")[0] ?? "");

/** Pieces of earlier builds. Those that are the same were written in place, for a server that runs meanwhile. */
function removeAllBut(written: ReadonlySet<string>): void {
  for (const file of readdirSync(join(compiled, pieces)))
    if (!written.has(`${pieces}/${file}`)) rmSync(join(compiled, pieces, file));
}

try {
  await gather();
} catch {
  // All starts from the many files, as it was compiled.
}
