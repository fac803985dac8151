import { InputError, type Problem } from "./problems.js";

/** What one thread tells another: an answer, or what is wrong with a study, which would lose its problems as an error. */
export type Reply<Answer> =
  | { readonly answer: Answer }
  | { readonly subject: string; readonly problems: readonly Problem[] };

export async function replyOf<Answer>(work: () => Answer | Promise<Answer>): Promise<Reply<Answer>> {
  try {
    return { answer: await work() };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { subject: error.subject, problems: error.problems };
  }
}

/** @throws InputError */
export function answerIn<Answer>(reply: Reply<Answer>): Answer {
  if ("answer" in reply) return reply.answer;
  throw new InputError(reply.subject, reply.problems);
}
