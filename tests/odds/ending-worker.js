import { parentPort } from "node:worker_threads";

/** Answers every question with nothing, but ends in the middle of the lake at place 3 of block 0, and never answers for the one at 5. */
parentPort.on("message", ({ question: { block, lake } }) => {
  if (block === 0 && lake === 3) process.exit(7);
  if (block === 0 && lake === 5) return;
  parentPort.postMessage({ kind: "answer", answer: { expected: [], cost: [], establishment: [] } });
});
