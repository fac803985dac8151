import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { loadAssumptions } from "#product/assumptions/load.js";
import { projectRoot } from "#product/project-root.js";
import { assumptionsFolder } from "#product/report/document/assets.js";
import { type Hunt, type Hunted, hunt } from "./fuzz/hunt.js";
import { longHunt } from "./fuzz/long-hunt.js";
import { pdfHunt } from "./fuzz/pdf-hunt.js";
import { requestHunt } from "./fuzz/request-hunt.js";
import { shortHunt } from "./fuzz/short-hunt.js";
import { recordHunt, studyHunt } from "./fuzz/study-hunt.js";
import { sweepHunt } from "./fuzz/sweep-hunt.js";
import { tableHunt } from "./fuzz/tables.js";

const { values } = parseArgs({
  options: {
    cases: { type: "string", default: "100000" },
    seed: { type: "string", default: "1" },
    only: { type: "string", default: "" },
  },
});

const seed = Number(values.seed);
const cases = Number(values.cases);
const outFolder = join(projectRoot, "out", "fuzz");

async function run<Case>(each: Hunt<Case>, count: number): Promise<number> {
  const start = Date.now();
  const told = (done: number) => {
    if (done % 1000 === 0) console.log(`  ${each.name}: ${done} cases`);
  };
  const result = await hunt(each, { seed, count, told });
  print(each.name, result, (Date.now() - start) / 1000);
  return result.found.length;
}

function print<Case>(name: string, result: Hunted<Case>, seconds: number): void {
  const endings = [...result.endings].map(([ending, number]) => `${number} ${ending}`).join(", ");
  console.log(`${name}: ${result.cases} cases from seed ${seed} in ${seconds.toFixed(0)} s: ${endings}`);
  console.log(`  slowest case ${result.slowestMilliseconds.toFixed(0)} ms of processor time`);
  console.log(`  ${result.found.length} kinds of faults`);
  for (const [index, { seed: from, fault, value }] of result.found.entries()) {
    const file = join(outFolder, `${name.replaceAll(" ", "-")}-${seed}-${index}.txt`);
    mkdirSync(outFolder, { recursive: true });
    writeFileSync(file, typeof value === "string" ? value : JSON.stringify(value, undefined, 1));
    console.log(`  ${fault.what}: ${fault.detail}\n    batch of seed ${from}, case in ${file}`);
  }
}

/** Shares of the cases. */
const hunts = [
  { share: 0.3, start: (count: number) => run(studyHunt(assumptions), count) },
  { share: 0.1, start: (count: number) => run(recordHunt(assumptions), count) },
  { share: 0.1, start: (count: number) => run(tableHunt(), count) },
  { share: 0.2, start: (count: number) => run(requestHunt(), count) },
  { share: 0.1, start: (count: number) => run(shortHunt(assumptions), count) },
  { share: 0.1, start: (count: number) => run(sweepHunt(assumptions), count) },
  { share: 0.05, start: (count: number) => run(longHunt(assumptions), count) },
  { share: 0.05, start: async (count: number) => run(await pdfHunt(), count) },
];

const assumptions = loadAssumptions(assumptionsFolder);
let faults = 0;
for (const [index, { share, start }] of hunts.entries()) {
  if (values.only === "" || values.only === String(index + 1))
    faults += await start(Math.ceil(share * cases));
}
process.exitCode = faults === 0 ? 0 : 1;
