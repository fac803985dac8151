import type { RowView, TableView } from "../words/view-types.js";

interface Carrying {
  /** Columns whose sums are carried from page to page. */
  readonly columns: readonly number[];
  /** For each row the amounts printed in those columns; absent for a heading or a sum. */
  readonly amounts: ReadonlyArray<readonly number[] | undefined>;
  readonly text: (amount: number) => string;
  /** Where each group has a sum of its own, the sums carried begin anew with it. */
  readonly byGroup?: boolean;
}

/**
 * Rows of a table, each after which a page may end with the sums so far: not a heading, and nothing before a sum. The
 * sums are those of the amounts as printed; browser/carry.ts prints them where pages come to end.
 */
export function carrying(
  rows: readonly RowView[],
  { columns, amounts, text, byGroup = false }: Carrying,
): Pick<TableView, "rows" | "carries"> {
  let sums = columns.map(() => 0);
  const printedRows = rows.map((row, index): RowView => {
    if (byGroup && row.group) sums = columns.map(() => 0);
    const own = amounts[index];
    if (own) sums = sums.map((sum, place) => sum + (own[place] ?? 0));
    const next = rows[index + 1];
    const isBeforeSum = next !== undefined && !next.group && amounts[index + 1] === undefined;
    if (row.group || next === undefined || isBeforeSum) return row;
    return { ...row, pageMayEnd: { sums: byGroup && next.group ? [] : sums.map(text) } };
  });
  return { rows: printedRows, carries: columns };
}
