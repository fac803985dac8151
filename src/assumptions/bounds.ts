import type { AssumptionUnit, Bounds } from "../model/register/expected.js";

export function isWithin(value: number, { from, above, to, below }: Bounds): boolean {
  return (
    (from === undefined || value >= from) &&
    (above === undefined || value > above) &&
    (to === undefined || value <= to) &&
    (below === undefined || value < below)
  );
}

/** What is allowed, in words: "above 0 and at most 1 m". */
export function boundsText({ from, above, to, below }: Bounds, unit: AssumptionUnit): string {
  const parts = [
    from === undefined ? [] : [`at least ${from}`],
    above === undefined ? [] : [`above ${above}`],
    to === undefined ? [] : [`at most ${to.toLocaleString("en-US")}`],
    below === undefined ? [] : [`below ${below}`],
  ].flat();
  if (parts.length === 0) return "any number";
  const values = parts.join(" and ");
  return unit === "1" || unit === "share" ? values : `${values} ${unit}`;
}

const larger = (a: number | undefined, b: number | undefined) =>
  a === undefined || b === undefined ? (a ?? b) : Math.max(a, b);

const smaller = (a: number | undefined, b: number | undefined) =>
  a === undefined || b === undefined ? (a ?? b) : Math.min(a, b);

/** What both allow. */
export const boundsOfBoth = (a: Bounds, b: Bounds): Bounds => ({
  from: larger(a.from, b.from),
  above: larger(a.above, b.above),
  to: smaller(a.to, b.to),
  below: smaller(a.below, b.below),
});
