import { createHash } from "node:crypto";
import type { ComparedText } from "./questions.js";

/** Runs by their text: a revision's number may stand for another text after the database was restored. */
export function runCache<Asked extends ComparedText, Run>(
  mostKept: number,
  compute: (asked: Asked) => Run,
): (asked: Asked) => Run {
  const runs = new Map<string, Run>();
  return (asked) => {
    const key = keyOf(asked);
    const run = runs.get(key) ?? compute(asked);
    runs.delete(key);
    runs.set(key, run);
    const oldest = runs.keys().next().value;
    if (runs.size > mostKept && oldest !== undefined) runs.delete(oldest);
    return run;
  };
}

const keyOf = ({ text, files }: ComparedText): string =>
  createHash("sha256")
    .update(JSON.stringify([text, files ?? null]))
    .digest("hex");
