/** Bars below each other, each beside its name and its amount; names are text of the page, so that any length wraps. */
export interface RowPicture {
  /** States the finding. */
  readonly title: string;
  /** What a reader who cannot see it should know. */
  readonly alternative: string;
  readonly rows: readonly PictureRow[];
  /** Lines through all rows. */
  readonly lines: ReadonlyArray<{ readonly x: number; readonly kind: "zero" | "mark" }>;
  readonly note: string;
}

export interface PictureRow {
  readonly name: string;
  readonly value: string;
  /** In hundredths of the width. */
  readonly bars: readonly RowBar[];
  readonly strong?: boolean;
}

export type BarKind = "ramp" | "rack" | "total" | "before" | "once" | "low" | "high";

export interface RowBar {
  readonly kind: BarKind;
  readonly x: number;
  readonly width: number;
}

/** Places on a scale that holds all amounts and nothing; one on it for each of several is kept a little off the edges. */
export function scaleOver(amounts: readonly number[]): (amount: number) => number {
  const [low, high] = [Math.min(0, ...amounts), Math.max(0, ...amounts)];
  const span = high - low || 1;
  return (amount) => round(1 + ((amount - low) / span) * 98);
}

/** A bar between two amounts, never too thin to be seen. */
export function barBetween(
  kind: BarKind,
  from: number,
  to: number,
  place: (amount: number) => number,
): RowBar {
  const [left, right] = [place(Math.min(from, to)), place(Math.max(from, to))];
  return { kind, x: left, width: round(Math.max(0.4, right - left)) };
}

const round = (value: number) => Math.round(value * 100) / 100;

export const alternativeOf = (title: string, rows: readonly PictureRow[]): string =>
  `${title}. ${rows.map(({ name, value }) => `${name}: ${value}`).join("; ")}.`;
