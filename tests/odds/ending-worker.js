/** Answers every question with nothing, but ends in the middle of the lake at place 3 of block 0, and never answers for the one at 5. */
export const work = async ({ question: { block, lake } }) => {
  if (block === 0 && lake === 3) process.exit(7);
  if (block === 0 && lake === 5) await new Promise(() => undefined);
  return { answer: { expected: [], cost: [], establishment: [] } };
};
