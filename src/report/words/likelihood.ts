/** A likelihood word with the share of outcomes below which it is used. */
export interface Likelihood {
  readonly below: number;
  readonly word: string;
}

/** From the least likely on; each word reaches from the limit before it to its own. */
export const likelihoods: readonly Likelihood[] = [
  { below: 0.01, word: "exceptionally unlikely" },
  { below: 0.1, word: "very unlikely" },
  { below: 0.33, word: "unlikely" },
  { below: 0.45, word: "less likely than not" },
  { below: 0.55, word: "about as likely as not" },
  { below: 0.67, word: "more likely than not" },
  { below: 0.9, word: "likely" },
  { below: 0.99, word: "very likely" },
  { below: 1.01, word: "almost certain" },
];

export const likelihoodWord = (share: number): string =>
  likelihoods.find(({ below }) => share < below)?.word ?? "almost certain";

/** Chances as people count them. */
const counted = [
  [1, 20],
  [1, 10],
  [1, 5],
  [1, 4],
  [3, 10],
  [1, 3],
  [2, 5],
  [1, 2],
  [3, 5],
  [2, 3],
  [7, 10],
  [3, 4],
  [4, 5],
  [9, 10],
  [19, 20],
] as const;

/** A share as a lay reader counts, never none and never all: "about 1 in 4", "fewer than 1 in 100". */
export function inCounts(share: number): string {
  if (share < 0.01) return "fewer than 1 in 100";
  if (share < 0.045) return "fewer than 1 in 20";
  if (share > 0.99) return "more than 99 in 100";
  if (share > 0.955) return "more than 19 in 20";
  const distance = ([some, all]: readonly [number, number]) => Math.abs(share - some / all);
  const [nearest] = counted.toSorted((one, other) => distance(one) - distance(other));
  return nearest ? `about ${nearest[0]} in ${nearest[1]}` : "";
}
