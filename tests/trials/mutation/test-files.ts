import { readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { createViteServer } from "vitest/node";
import type * as collect from "./collect.js";

/** Loads test files in this process, in place of a new thread for each mutant, which takes a second. */
export interface TestFiles {
  /** Paths of the test files, as `tests/model/root-search.test.ts`. */
  readonly names: readonly string[];
  /** Evaluates a test file and its helpers anew, so that nothing worked out under another mutant is left. */
  load(name: string): Promise<readonly collect.CollectedTest[]>;
  close(): Promise<void>;
}

const besideThis = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const standIn = (name: string) => ({
  find: new RegExp(`^${name}$`),
  replacement: besideThis(`stand-ins/${name}.js`),
});

/** The shipped assumptions are the same for every mutant and slow to read. */
const keptModule = path.join("tests", "model", "assumptions.ts");

export interface QuickTests {
  readonly folders: readonly string[];
  /** Words of the names of slow tests. */
  readonly leftOut: readonly string[];
  /** Of the processor: a mutant that no test has found by then counts as surviving. */
  readonly secondsPerMutant: number;
}

export async function openTestFiles(root: string, { folders, leftOut }: QuickTests) {
  const server = await createViteServer({
    root,
    configFile: false,
    appType: "custom",
    logLevel: "error",
    server: { middlewareMode: true, hmr: false, ws: false, watch: null },
    optimizeDeps: { noDiscovery: true },
    resolve: {
      alias: ["vitest", "fast-check", "jstat"].map(standIn),
    },
  });
  const { runner } = server.environments.ssr as unknown as { runner: ModuleRunner };
  const { takeCollected } = (await runner.import(besideThis("collect.js"))) as typeof collect;
  const tests = path.join(root, "tests");
  return {
    names: folders.flatMap((folder) => testFilesIn(root, folder)),
    async load(name: string) {
      for (const [id, module] of runner.evaluatedModules.idToModuleMap) {
        if (id.startsWith(tests) && !id.endsWith(keptModule))
          runner.evaluatedModules.invalidateModule(module);
      }
      takeCollected();
      await runner.import(path.join(root, name));
      return takeCollected().filter((test) => !leftOut.some((words) => test.name.includes(words)));
    },
    close: () => server.close(),
  } satisfies TestFiles;
}

interface ModuleRunner {
  import(file: string): Promise<unknown>;
  readonly evaluatedModules: {
    readonly idToModuleMap: ReadonlyMap<string, object>;
    invalidateModule(module: object): void;
  };
}

const testFilesIn = (root: string, folder: string) =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".test.ts"))
    .map((name) => path.join(folder, name))
    .sort();
