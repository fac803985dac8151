import { parentPort, threadId } from "node:worker_threads";

/** Answers the text "answer" with the number of its thread; ends at "end", and never answers anything else. */
parentPort.on("message", ({ asked }) => {
  if (asked.text === "end") process.exit(7);
  if (asked.text !== "answer") return;
  parentPort.postMessage({ answer: { line: undefined, subject: String(threadId), problems: [] } });
});
