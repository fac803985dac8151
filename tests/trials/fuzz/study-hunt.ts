import type fc from "fast-check";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import type { Hunt } from "./hunt.js";
import { judgeStudy } from "./judge-study.js";
import { studyTexts } from "./studies.js";
import { recordTexts } from "./tables.js";

/** Every so manieth study that is computed is computed with all that a report tells. */
const wholeOf = 20;

export const studyHunt = (assumptions: AssumptionSet): Hunt<string> =>
  textHunt("study files", studyTexts(), assumptions);

export const recordHunt = (assumptions: AssumptionSet): Hunt<string> =>
  textHunt("records", recordTexts(), assumptions);

function textHunt(name: string, cases: fc.Arbitrary<string>, assumptions: AssumptionSet): Hunt<string> {
  let judged = 0;
  return {
    name,
    cases,
    judge: (text) => {
      judged += 1;
      const verdict = judgeStudy(text, assumptions, judged % wholeOf === 0);
      return { ...verdict, ending: verdict.isComputed ? "computed" : "refused" };
    },
  };
}
