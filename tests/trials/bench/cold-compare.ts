import { readFileSync } from "node:fs";
import { deserialize } from "node:v8";
import { loadAssumptions } from "#product/assumptions/load.js";
import { comparisonText } from "#product/cli/comparison-text.js";
import "#product/cli/compare-command.js";
import { assumptionsFolder } from "#product/report/document/assets.js";
import { runStudy } from "#product/study/prepare/compute.js";
import { readStudyFile } from "#product/study/reading/read.js";
import { tuneEngine } from "#product/workers/engine.js";

/** What the command `compare` does in a process of its own but its draws, which are read from a file. */
tuneEngine();
const [study = "", odds = ""] = process.argv.slice(2);
const run = runStudy(readStudyFile(study), loadAssumptions(assumptionsFolder));
console.log(comparisonText(run, deserialize(readFileSync(odds))));
