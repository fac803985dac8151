import { mkdtempSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { browserTests } from "./busy/browser-tests.js";
import { startLoops } from "./busy/loops.js";
import { type FileRun, runTests } from "./busy/runs.js";
import { runsTold, runTold } from "./busy/table.js";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { runs: { type: "string", default: "20" }, loops: { type: "string", default: "2" } },
});

const files = positionals.length > 0 ? positionals : browserTests();
const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-busy-"));
const loops = startLoops(Number(values.loops));
console.log(
  `runs ${values.runs}, test files ${files.length}, busy loops ${values.loops}, processors ${availableParallelism()}`,
);
const runs: FileRun[][] = [];
try {
  for (let number = 1; number <= Number(values.runs); number += 1) {
    const run = await runTests(files, join(folder, `${number}.json`));
    runs.push(run);
    console.log(runTold(number, run));
    for (const { file, failures } of run) for (const each of failures) console.log(`  ${file}: ${each}`);
  }
} finally {
  await loops.end();
  rmSync(folder, { recursive: true });
}
for (const line of runsTold(runs)) console.log(line);
const allPassed = (run: readonly FileRun[]) =>
  run.length > 0 && run.every(({ failures }) => failures.length === 0);
process.exitCode = runs.length > 0 && runs.every(allPassed) ? 0 : 1;
