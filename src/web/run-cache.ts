import { createHash } from "node:crypto";

const mostRunsKept = 16;

/** Runs by their text: a revision's number may stand for another text after the database was restored. */
export function runCache<Run>(
  compute: (text: string, fileName: string) => Run,
): (text: string, fileName: string) => Run {
  const runs = new Map<string, Run>();
  return (text, fileName) => {
    const key = createHash("sha256").update(text).digest("hex");
    const run = runs.get(key) ?? compute(text, fileName);
    runs.delete(key);
    runs.set(key, run);
    const oldest = runs.keys().next().value;
    if (runs.size > mostRunsKept && oldest !== undefined) runs.delete(oldest);
    return run;
  };
}
