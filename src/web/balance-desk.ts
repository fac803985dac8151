import type { AssumptionSet } from "../assumptions/entry.js";
import { type BalanceLine, balanceLine } from "../report/balance-line.js";
import { compareStudy } from "../study/compute.js";
import { InputError, type Problem } from "../study/problems.js";
import { readStudyText } from "../study/read.js";

/** The balance of a study, or why there is none yet. */
export type BalanceState =
  | { readonly line: BalanceLine }
  | { readonly line?: undefined; readonly problems: readonly Problem[] };

interface StudyText {
  readonly text: string;
  readonly fileName: string;
}

const mostKept = 32;

/** Works out balances, and remembers those of the texts asked for last. */
export function balanceDesk(assumptions: AssumptionSet): (study: StudyText) => BalanceState {
  const known = new Map<string, BalanceState>();
  return ({ text, fileName }) => {
    const found = known.get(text) ?? weigh(text, fileName, assumptions);
    known.delete(text);
    known.set(text, found);
    const oldest = known.keys().next().value;
    if (known.size > mostKept && oldest !== undefined) known.delete(oldest);
    return found;
  };
}

function weigh(text: string, fileName: string, assumptions: AssumptionSet): BalanceState {
  try {
    const document = readStudyText(text, fileName);
    return { line: balanceLine({ document, comparison: compareStudy(document, assumptions) }) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { problems: error.problems };
  }
}
