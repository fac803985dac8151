import { type WorkedExample, workedExamples } from "../../src/method/worked-example.js";
import { reportContext } from "../../src/report/document/context.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { reckon } from "../report/reckon.js";

export const examplesOf = (run: StudyRun) => workedExamples(reportContext(run)).examples;
export const stepsOf = (example: WorkedExample | undefined) =>
  (example?.groups ?? []).flatMap(({ steps }) => steps);
export const step = (example: WorkedExample | undefined, name: string) =>
  stepsOf(example).find((each) => each.name.startsWith(name));
export const value = (text = "") => reckon(text);
