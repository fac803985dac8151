/** Answers the text "answer"; ends at "end", and never answers anything else. */
export const work = async ({ question: { asked } }) => {
  if (asked.text === "end") process.exit(7);
  if (asked.text !== "answer") await new Promise(() => undefined);
  return { answer: { line: undefined, subject: "", problems: [] } };
};
