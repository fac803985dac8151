import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { loadAssumptions } from "#product/assumptions/load.js";
import { programVersion } from "#product/assumptions/version.js";
import { projectRoot } from "#product/project-root.js";
import { assumptionsFolder } from "#product/report/document/assets.js";
import { readStudyFile } from "#product/study/reading/read.js";
import { type LakeFigures, plainLakes } from "./long-run/plain-lakes.js";
import { estimated, told } from "./long-run/told.js";

/**
 * Holds the odds of an example against a long plain run: lakes that are independent of one another, in parts of a
 * thousand, each of which is kept as it is done. With "estimate" in place of a number the odds alone are drawn anew, beside
 * the lakes of the record.
 *   node out/trials/long-run.js sorrel-bend 10000
 *   node out/trials/long-run.js sorrel-bend estimate
 */
const [example = "ninemoss", lakes = "10000"] = process.argv.slice(2);
const seed = 20_261_128;
const part = 1000;

const document = readStudyFile(join(projectRoot, "src", "examples", `${example}.yaml`));
const assumptions = loadAssumptions(assumptionsFolder);
const out = join(projectRoot, "tests", "trials", "long-run", `${example}.json`);
const drawnBy = { date: new Date().toISOString().slice(0, 10), version: programVersion() };

/** The figures of all lakes, of which those that are not kept are worked out. */
function longRun(count: number) {
  const parts = join(projectRoot, "out", "long-run", example);
  mkdirSync(parts, { recursive: true });
  const known = new Set(readdirSync(parts));
  const all: LakeFigures[] = [];
  for (let first = 0; first < count; first += part) {
    const file = join(parts, `${first}.json`);
    if (!known.has(`${first}.json`)) {
      const found = plainLakes(document, assumptions, { seed, first, count: part });
      writeFileSync(file, JSON.stringify(found));
    }
    all.push(...JSON.parse(readFileSync(file, "utf8")));
  }
  return { example, ...drawnBy, seed, longRun: told(all) };
}

const lakesTold = lakes === "estimate" ? JSON.parse(readFileSync(out, "utf8")) : longRun(Number(lakes));
const record = { ...lakesTold, estimate: { ...drawnBy, ...estimated(document, assumptions) } };
writeFileSync(out, `${JSON.stringify(record, undefined, 2)}\n`);
console.log(JSON.stringify(record, undefined, 2));
