import { parentPort } from "node:worker_threads";

/** Answers the texts "answer"; ends at "end", and never answers anything else. */
parentPort.on("message", ({ asked }) => {
  if (asked.text === "end") process.exit(7);
  if (asked.text === "answer")
    parentPort.postMessage({ answer: { line: undefined, subject: "", problems: [] } });
});
