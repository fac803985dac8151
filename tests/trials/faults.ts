import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { randomStream } from "#product/model/random/generator.js";
import { diskFaults } from "./faults/disk.js";
import { killWriters } from "./faults/killed.js";
import { printingFaults } from "./faults/printing.js";

const { values } = parseArgs({
  options: { kills: { type: "string", default: "200" }, seed: { type: "string", default: "1" } },
});

const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-faults-"));
try {
  const seed = Number(values.seed);
  const { uniform } = randomStream(seed, "kills");
  const report = await killWriters(folder, {
    kills: Number(values.kills),
    random: uniform,
    longestMilliseconds: 250,
  });
  console.log(
    `${report.kills} kills from seed ${seed}: ${report.saves} saves, ${report.issues} issues and ${report.restores} restores acknowledged, ${report.lost.length} lost`,
  );
  for (const each of report.lost) console.log(`  ${each}`);
  const others = [...diskFaults(), ...(await printingFaults())];
  for (const { what, found, isGood } of others) console.log(`${isGood ? "good" : "BAD "}  ${what}: ${found}`);
  process.exitCode = report.lost.length === 0 && others.every(({ isGood }) => isGood) ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true });
}
