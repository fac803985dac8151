import { createHash } from "node:crypto";
import { LRUCache } from "lru-cache";
import type { ComparedText } from "./questions.js";

/** Runs by their text: a revision's number may stand for another text after the database was restored. */
export function runCache<Asked extends ComparedText, Run extends object>(
  mostKept: number,
  compute: (asked: Asked) => Run,
): (asked: Asked) => Run {
  const runs = new LRUCache<string, Run>({ max: mostKept });
  return (asked) => {
    const key = keyOf(asked);
    const run = runs.get(key) ?? compute(asked);
    runs.set(key, run);
    return run;
  };
}

const keyOf = ({ text, files }: ComparedText): string =>
  createHash("sha256")
    .update(JSON.stringify([text, files ?? null]))
    .digest("hex");
