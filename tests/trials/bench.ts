import { cpus } from "node:os";
import { join } from "node:path";
import { loadAssumptions } from "#product/assumptions/load.js";
import { assumptionsFolder, examplesFolder } from "#product/report/document/assets.js";
import { prepareStudy } from "#product/study/prepare/prepared.js";
import { readStudyFile } from "#product/study/reading/read.js";
import { timeCold } from "./bench/cold.js";
import { compareWhole, targetSize, timeLargeLakes } from "./bench/lake.js";
import { editedFutures, timeOdds, usualFutures } from "./bench/odds.js";
import { timePrints } from "./bench/print.js";
import { growthTables } from "./bench/scaling.js";
import { timeSearch } from "./bench/search.js";
import { timeTyping } from "./bench/typing.js";
import { median } from "./median.js";

/** Speed of the main job on this machine: medians, and the ratio of print to computation in one run. */
const warmUps = 40;
const repeats = 40;
/** Power of a size with which time may grow: 1 is linear, and what is measured scatters. */
const steepest = 1.1;

function timed(action: () => void, times: number): number {
  return median(
    Array.from({ length: times }, () => {
      const start = performance.now();
      action();
      return performance.now() - start;
    }),
  );
}

const assumptions = loadAssumptions(assumptionsFolder);
const document = readStudyFile(join(examplesFolder, "sorrel-bend.yaml"));
const compareDocument = () => {
  const { input, assumed } = prepareStudy(document, assumptions);
  compareWhole(input, assumed);
};
const cold = timed(compareDocument, 1);
// Before all else, so that its memory is that of drawing alone.
const odds = await timeOdds(document, assumptions);
timed(compareDocument, warmUps);
const warm = timed(compareDocument, repeats);

const prepared = prepareStudy(document, assumptions);
const largeLakes = timeLargeLakes(prepared);
const withRecord = readStudyFile(join(examplesFolder, "ninemoss.yaml"));
const growth = growthTables(prepared, prepareStudy(withRecord, assumptions));

const starts = await timeCold(document, assumptions);

const search = await timeSearch(document, assumptions);

const prints = await timePrints(document, assumptions);

const typing = await timeTyping();

const row = (what: string, milliseconds: number, target: number) =>
  console.log(`${what.padEnd(56)} ${milliseconds.toFixed(1).padStart(8)} ms   target under ${target} ms`);

console.log(`${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} cores, Node ${process.version}`);
console.log(
  `first example: ${document.structures.length} structures, ${document.money.horizon} years, ${document.options.length} options`,
);
console.log(`comparison, first call: ${cold.toFixed(1)} ms`);
row("comparison, warm (median)", warm, 30);
row("board's part as PDF, cold browser, with computation", prints.cold, 2500);
row("board's part as PDF, warm browser (median)", prints.warm, 1200);
row("frontier at central values, first call", search.frontier, 2000);
row(`search over ${search.futures} outcomes, new workers`, search.first, 20_000);
row("the same again", search.again, 20_000);
row("longest delay of the main thread meanwhile", search.longestDelay, 50);
console.log(`full report, warm (median): ${prints.full.toFixed(0)} ms`);
console.log(`size of the full report: ${(prints.fullBytes / 1024 / 1024).toFixed(2)} MB   target under 3 MB`);
console.log(`ratio of warm board's part to warm comparison: ${(prints.warm / warm).toFixed(1)}`);
row(
  `board's part, ${prints.manyStructures.structures} structures (median)`,
  prints.manyStructures.board,
  4000,
);
console.log(
  `full report, ${prints.manyStructures.structures} structures: ${prints.manyStructures.full.toFixed(0)} ms`,
);
const { reports, all, megabytes } = prints.together;
console.log(`${reports} full reports at once: ${all.toFixed(0)} ms, ${megabytes.toFixed(0)} MB resident`);
for (const { structures, milliseconds, perStructureRatio } of largeLakes) {
  const what = `lake of ${structures} structures, 40 years (median)`;
  if (structures === targetSize) row(what, milliseconds, 150);
  else console.log(`${what.padEnd(56)} ${milliseconds.toFixed(1).padStart(8)} ms`);
  console.log(`  time per structure over that of the smallest lake: ${perStructureRatio.toFixed(2)}`);
}
for (const { what, rows } of growth) {
  console.log(`growth with ${what}; power since the row before, target at most ${steepest}`);
  for (const { size, milliseconds, power } of rows)
    console.log(
      `  ${String(size).padStart(5)} ${milliseconds.toFixed(1).padStart(9)} ms  ${power?.toFixed(2) ?? ""}`,
    );
}
for (const [what, milliseconds, target] of [
  ["--help, new process", starts.help, 150],
  ["compare, new process, all but its draws", starts.compare, 700],
  ["from a server's start to its first page with its style", starts.firstPage, 600],
  ["an example's page when first asked for", starts.example, 300],
] as const) {
  row(what, milliseconds, target);
  console.log(`  ${(milliseconds / starts.bare).toFixed(1)} times a bare start of the engine`);
}
for (const { workers, all, edited } of odds.byWorkers) {
  row(`${usualFutures} futures, ${odds.inputs} inputs, ${workers} workers (median)`, all, 2000);
  row(`${editedFutures} futures after an edit, ${workers} workers (median)`, edited, 400);
}
for (const { futures, all, megabytes } of odds.byFutures) {
  const each = ((1000 * all) / futures).toFixed(0);
  console.log(
    `${futures} futures, 2 workers: ${all.toFixed(0)} ms, ${each} µs each, ${megabytes.toFixed(0)} MB resident`,
  );
}
row(`from a key to the balance, first example, ${typing.edits} edits (95th percentile)`, typing.balance, 150);
for (const { path, firstPaint, kilobytes } of typing.pages) {
  row(`first paint of ${path}`, firstPaint, 300);
  console.log(`  ${kilobytes.toFixed(0)} KB with all that it loads   target under 250 KB`);
}
console.log(`longest wait of the main thread while drawing: ${odds.longestDelay.toFixed(0)} ms`);
console.log(`whole comparison over drawn future, in turns: ${odds.plainOverDrawn.toFixed(0)}`);
