import { assumptionFiles } from "../../src/assumptions/load.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { assumptions } from "../report/runs.js";
import { answersHere } from "../trials/answers-here.js";

/** What studies are computed with in tests. */
export const means = { assumptions, files: assumptionFiles(assumptionsFolder) };

/** Answers in this thread, without workers. */
export const answersInTest = () => answersHere(means);
