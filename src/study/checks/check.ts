import type { AssumptionSet } from "../../assumptions/entry.js";
import { prepareStudy } from "../prepare/prepared.js";
import { InputError, type Problem } from "../reading/problems.js";
import { parseText, readStudyText } from "../reading/read.js";

export interface StudyCheck {
  /** The parsed text; null if it is neither YAML nor JSON. */
  readonly document: unknown;
  /** What keeps the study from being computed; none if it is complete. */
  readonly problems: Problem[];
}

/** Checks any text as a study. */
export function checkStudy(text: string, name: string, assumptions: AssumptionSet): StudyCheck {
  return { document: documentIn(text, name), problems: problemsIn(text, name, assumptions) };
}

function documentIn(text: string, name: string): unknown {
  try {
    return parseText(text, name);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function problemsIn(text: string, name: string, assumptions: AssumptionSet): Problem[] {
  try {
    prepareStudy(readStudyText(text, name), assumptions);
    return [];
  } catch (error) {
    if (error instanceof InputError) return [...error.problems];
    throw error;
  }
}
