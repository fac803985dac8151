/** How firm a value is, from firm to soft. */
export const bases = ["published", "operator record", "common practice", "from memory", "judged"] as const;
export type Basis = (typeof bases)[number];

/** The softest of them. */
export const softestOf = (found: readonly Basis[]): Basis =>
  bases.findLast((basis) => found.includes(basis)) ?? bases[0];
