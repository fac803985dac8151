import { createHash } from "node:crypto";
import { type ComparedRun, explained, type StudyDifferences } from "../study/compared/compared.js";
import type { Explanation } from "../study/compared/explain.js";

/** A question that is worked out between other work of the server. */
export interface ExplainQuestion {
  /** The texts of both studies: what they are remembered by. */
  readonly texts: readonly [string, string];
  readonly runs: readonly [ComparedRun, ComparedRun];
  readonly differences: StudyDifferences;
}

/** Where readers ask what explains a difference. */
export interface ExplainDesk {
  /** The answer, once it is worked out; undefined within it where the studies do not compare. */
  readonly answer: (question: ExplainQuestion) => Promise<Explanation | undefined>;
  /** The answer if it comes within some milliseconds; the work goes on without a reader. */
  readonly within: (
    milliseconds: number,
    question: ExplainQuestion,
  ) => Promise<{ readonly explanation: Explanation | undefined } | "under way">;
}

const mostKept = 16;

/** One question at a time; the last answers are remembered, failures are not. */
export function explainDesk(): ExplainDesk {
  const answers = new Map<string, Promise<Explanation | undefined>>();
  let last: Promise<unknown> = Promise.resolve();
  const answer = (question: ExplainQuestion) => {
    const key = createHash("sha256").update(JSON.stringify(question.texts)).digest("hex");
    const known = answers.get(key);
    if (known) return known;
    const [left, right] = question.runs;
    const made = last.then(() => explained(left, right, question.differences));
    last = made.catch(() => answers.delete(key));
    answers.set(key, made);
    const oldest = answers.keys().next().value;
    if (answers.size > mostKept && oldest !== undefined) answers.delete(oldest);
    return made;
  };
  return {
    answer,
    within: (milliseconds, question) =>
      Promise.race([
        answer(question).then((explanation) => ({ explanation })),
        new Promise<"under way">((resolve) => {
          setTimeout(() => resolve("under way"), milliseconds).unref();
        }),
      ]),
  };
}
