import { createHash } from "node:crypto";

/** Where questions are answered that take seconds, between the other work of the server. */
export interface AnswerDesk<Question, Answer> {
  readonly answer: (question: Question) => Promise<Answer>;
  /** The answer if it comes within some milliseconds; the work goes on without a reader. */
  readonly within: (
    milliseconds: number,
    question: Question,
  ) => Promise<{ readonly answer: Answer } | "under way">;
}

const mostKept = 16;

/**
 * One question at a time; the last answers are remembered, failures are not.
 * @param textsOf the texts of the studies that a question is about: what its answer is remembered by
 * @param work gives other work its turn, at least every tenth of a second
 */
export function answerDesk<Question, Answer>(
  textsOf: (question: Question) => readonly string[],
  work: (question: Question) => Promise<Answer>,
): AnswerDesk<Question, Answer> {
  const answers = new Map<string, Promise<Answer>>();
  let last: Promise<unknown> = Promise.resolve();
  const answer = (question: Question) => {
    const key = createHash("sha256")
      .update(JSON.stringify(textsOf(question)))
      .digest("hex");
    const known = answers.get(key);
    if (known) return known;
    const made = last.then(() => work(question));
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
        answer(question).then((found) => ({ answer: found })),
        new Promise<"under way">((resolve) => {
          setTimeout(() => resolve("under way"), milliseconds).unref();
        }),
      ]),
  };
}

/** How long a page waits for an answer before it shows the rest. */
export const patienceMilliseconds = 800;
