import { join } from "node:path";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { assumptionsFolder, examplesFolder } from "../../src/report/assets.js";
import { runStudy, type StudyRun } from "../../src/study/compute.js";
import { readStudyFile } from "../../src/study/read.js";
import type { StudyDocument } from "../../src/study/schema.js";

export const assumptions = loadAssumptions(assumptionsFolder);

export const exampleDocument = (name: "sorrel-bend" | "ninemoss"): StudyDocument =>
  readStudyFile(join(examplesFolder, `${name}.yaml`));

export const exampleRun = (name: "sorrel-bend" | "ninemoss"): StudyRun =>
  runStudy(exampleDocument(name), assumptions);
