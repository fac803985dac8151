import { assumptionFiles } from "../../src/assumptions/load.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { assumptions } from "../report/runs.js";
import { answersHere } from "../trials/answers-here.js";

/** What studies are computed with in tests. */
export const means = { assumptions, files: assumptionFiles(assumptionsFolder) };

const answers = answersHere(means);

/** Answers in this thread, without workers, which keep what they last computed from one test to the next. */
export const answersInTest = () => answers;
