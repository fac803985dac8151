import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { loadAssumptions } from "#product/assumptions/load.js";
import { programVersion } from "#product/assumptions/version.js";
import { assumptionsFolder, projectRoot } from "#product/report/document/assets.js";
import { readStudyFile } from "#product/study/reading/read.js";
import { type LakeFigures, plainLakes } from "./long-run/plain-lakes.js";
import { estimated, told } from "./long-run/told.js";

/**
 * Holds the odds of an example against a long plain run: lakes that are independent of one another, in parts of a
 * thousand, each of which is kept as it is done.
 *   node out/trials/long-run.js sorrel-bend 4000
 */
const [example = "ninemoss", lakes = "4000"] = process.argv.slice(2);
const seed = 20_261_128;
const part = 1000;

const document = readStudyFile(join(projectRoot, "src", "examples", `${example}.yaml`));
const assumptions = loadAssumptions(assumptionsFolder);
const parts = join(projectRoot, "out", "long-run", example);
mkdirSync(parts, { recursive: true });
const known = new Set(readdirSync(parts));
for (let first = 0; first < Number(lakes); first += part) {
  const name = `${first}.json`;
  if (known.has(name)) continue;
  const found = plainLakes(document, assumptions, { seed, first, count: part });
  writeFileSync(join(parts, name), JSON.stringify(found));
}
const all = Array.from({ length: Number(lakes) / part }, (_, index): LakeFigures[] =>
  JSON.parse(readFileSync(join(parts, `${index * part}.json`), "utf8")),
).flat();
const record = {
  ...{ example, date: new Date().toISOString().slice(0, 10), seed, version: programVersion() },
  longRun: told(all),
  estimate: estimated(document, assumptions),
};
const out = join(projectRoot, "tests", "trials", "long-run", `${example}.json`);
mkdirSync(dirname(out), { recursive: true });
writeFileSync(out, `${JSON.stringify(record, undefined, 2)}\n`);
console.log(JSON.stringify(record, undefined, 2));
