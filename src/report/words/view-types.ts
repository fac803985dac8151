/** What the template prints: text and finished geometry, nothing left to compute. */
export interface TableView {
  readonly id: string;
  readonly caption: string;
  readonly head: readonly HeadCell[];
  readonly rows: readonly RowView[];
  readonly total?: RowView;
  readonly note?: string;
  readonly compact?: boolean;
  /** Columns whose sums are carried from page to page where the table runs over several. */
  readonly carries?: readonly number[];
}

interface HeadCell {
  readonly text: string;
  readonly numeric: boolean;
}

export interface RowView {
  readonly cells: readonly { readonly text: string; readonly numeric: boolean }[];
  /** Heading row over a group of rows. */
  readonly group?: boolean;
  readonly failed?: boolean;
  /** Sum of rows above it. */
  readonly subtotal?: boolean;
  /** A page may end after it, with these sums carried; none where a sum has just been told. */
  readonly pageMayEnd?: { readonly sums: readonly string[] };
}

/** Under which a table is in the tables as files. */
export const tableFileName = (id: string): string => `${id.replace(/^table-/, "")}.csv`;

export interface ChartView {
  readonly id: string;
  /** States the finding. */
  readonly title: string;
  /** What a reader who cannot see it should know. */
  readonly alternative: string;
  readonly source: string;
  readonly height: number;
  /** Chart.js configuration as JSON, safe inside a script element. */
  readonly json: string;
  readonly tableId: string;
}

export type Cell = string | { readonly number: string };

/** A numeric cell: set right-aligned with tabular figures. */
export const num = (text: string): Cell => ({ number: text });

export function head(...cells: readonly Cell[]): HeadCell[] {
  return cells.map((cell) =>
    typeof cell === "string" ? { text: cell, numeric: false } : { text: cell.number, numeric: true },
  );
}

export function row(...cells: readonly Cell[]): RowView {
  return { cells: head(...cells) };
}

export const subtotalRow = (...cells: readonly Cell[]): RowView => ({ ...row(...cells), subtotal: true });

export const groupRow = (text: string): RowView => ({ cells: [{ text, numeric: false }], group: true });
