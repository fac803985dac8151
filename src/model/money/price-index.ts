/** A table of general prices: one value a year, all on one base. */
export interface PriceIndex {
  readonly id: string;
  readonly name: string;
  readonly values: ReadonlyMap<number, number>;
}

/** A price year that the index table does not hold. */
export class PriceYearError extends Error {
  constructor(
    readonly index: PriceIndex,
    readonly year: number,
  ) {
    super(
      `${index.id} holds no value for ${year}; it holds ${yearsText(index)}. Choose one of these years, or add the value with its source.`,
    );
  }
}

/**
 * What an amount in prices of `from` is multiplied by to be in prices of `to`: f = I(q)/I(p), with I the index, p the year
 * `from` and q the year `to`.
 * Both are annual averages, so the factor leads from the middle of one year to the middle of the other.
 * @throws PriceYearError if the table lacks one of the years
 */
export function priceFactor(index: PriceIndex, from: number, to: number): number {
  return indexValue(index, to) / indexValue(index, from);
}

function indexValue(index: PriceIndex, year: number): number {
  const value = index.values.get(year);
  if (value === undefined) throw new PriceYearError(index, year);
  return value;
}

/**
 * An index in the years that it lacks after its last and before its first, by how another one moved: I(q) = I(l) J(q)/J(l),
 * with l the nearest year that it holds and J the other index.
 */
export function continuedBy(index: PriceIndex, other: PriceIndex): PriceIndex {
  const years = [...index.values.keys()];
  const [first, last] = [Math.min(...years), Math.max(...years)];
  const added = [...other.values.keys()].filter(
    (year) => (year < first && other.values.has(first)) || (year > last && other.values.has(last)),
  );
  const values = added.map((year) => {
    const nearest = year > last ? last : first;
    return [year, indexValue(index, nearest) * priceFactor(other, nearest, year)] as const;
  });
  return { ...index, values: new Map([...index.values, ...values]) };
}

/** The years that a table holds, in runs without gaps: "1980 to 2012, 2014". */
export function yearsText({ values }: PriceIndex): string {
  const runs: Array<{ first: number; last: number }> = [];
  for (const year of [...values.keys()].sort((one, other) => one - other)) {
    const run = runs.at(-1);
    if (run && year === run.last + 1) run.last = year;
    else runs.push({ first: year, last: year });
  }
  return runs.map(({ first, last }) => (first === last ? `${first}` : `${first} to ${last}`)).join(", ");
}
