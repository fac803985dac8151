import type { AssumptionSet } from "#product/assumptions/entry.js";
import { InputError } from "#product/study/reading/problems.js";
import { type Fault, longestMilliseconds, processorMilliseconds } from "./fault.js";
import type { Verdict } from "./hunt.js";
import { faultsOfProblems, judgeStudy, stackOf } from "./judge-study.js";

/** What came of work that was not refused. */
interface Done {
  readonly faults: readonly Fault[];
  readonly ending: string;
}

/** Does some work: either it comes to an end, or problems name their places. Its whole time counts, computing included. */
export async function judgeWork(work: () => Promise<Done> | Done): Promise<Verdict> {
  const start = processorMilliseconds();
  const { faults, ending } = await doneOf(work);
  const milliseconds = processorMilliseconds() - start;
  const slow =
    milliseconds > longestMilliseconds ? [{ what: "slow", detail: `${milliseconds.toFixed(0)} ms` }] : [];
  return { faults: [...faults, ...slow], milliseconds, ending };
}

async function doneOf(work: () => Promise<Done> | Done): Promise<Done> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof InputError) return { faults: faultsOfProblems(error.problems), ending: "refused" };
    return { faults: [{ what: "crash", detail: stackOf(error) }], ending: "crash" };
  }
}

/** A study that the program made itself: it may be refused only for what was typed. */
export function judgedStudy(text: string, assumptions: AssumptionSet): Done {
  const { faults, isComputed } = judgeStudy(text, assumptions);
  return { faults, ending: isComputed ? "computed" : "refused as a full study" };
}
