import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { projectRoot } from "#product/project-root.js";

const folder = join(projectRoot, "tests");
const startsBrowser = /\b(?:launchBrowser|createPrinter)\(/;

/** Test files that start a browser, by themselves or by what they load of the tests: "tests/report/print/pdf.test.ts". */
export function browserTests(): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".test.ts"))
    .filter((path) => mayStartBrowser(join(folder, path), new Set()))
    .map((path) => relative(projectRoot, join(folder, path)))
    .sort();
}

function mayStartBrowser(file: string, known: Set<string>): boolean {
  if (known.has(file)) return false;
  known.add(file);
  const text = readFileSync(file, "utf8");
  if (startsBrowser.test(text)) return true;
  return [...text.matchAll(/from "(\.[^"]+)\.js"/g)]
    .map(([, from = ""]) => join(dirname(file), `${from}.ts`))
    .filter((loaded) => loaded.startsWith(folder) && existsSync(loaded))
    .some((loaded) => mayStartBrowser(loaded, known));
}
