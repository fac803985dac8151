/**
 * The relations of the method document for a lake, here and in what imports this, written from that document alone:
 * nothing of the program is imported. All numbers are read from the printed page.
 */
export type Values = ReadonlyMap<string, number>;

export const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
export const twelve = days.map((_, month) => month);

export interface Lake {
  readonly given: Values;
  readonly surface: readonly number[];
  readonly deep: readonly number[];
  readonly air: readonly number[];
  readonly humidity: readonly number[];
  /** Mean level of each month. */
  readonly level: readonly number[];
  /** Level of each day; none where the page has a record's means alone. */
  readonly daily: readonly number[];
}

export const get = (values: Values, symbol: string): number => {
  const value = values.get(symbol);
  if (value === undefined) throw new Error(`“${symbol}” is not printed`);
  return value;
};

export const of = (list: readonly number[], index: number): number => list[index] ?? Number.NaN;

/** Straight lines between the points of a schedule, the last to the first. */
export function dailyLevels(points: readonly (readonly [day: number, level: number])[]): number[] {
  return Array.from({ length: 365 }, (_, day) => {
    const after = points.find(([at]) => at > day) ?? points[0];
    const before = points.filter(([at]) => at <= day).at(-1) ?? points.at(-1);
    if (!after || !before) return Number.NaN;
    const span = (after[0] - before[0] + 365) % 365 || 365;
    return before[1] + ((after[1] - before[1]) * ((day - before[0] + 365) % 365)) / span;
  });
}

/** Density over capacity times suitability in the middle of a month since establishment. */
export function densityIn(month: number, { given }: Lake): number {
  const [w, s, p, peak] = [get(given, "w"), get(given, "s0"), get(given, "p"), get(given, "T")];
  const [later, over] = [get(given, "q"), get(given, "yd")];
  const rate = (Math.log((1 - s) / s) + Math.log(p / (1 - p))) / peak;
  const at = (t: number) => {
    const grown = 1 / (1 + (Math.exp(-rate * t) * (1 - s)) / s);
    return grown * (1 - (1 - later) * Math.min(1, Math.max(0, (t - peak) / over)));
  };
  const share = at((month + 0.5) / 12);
  return w * (Math.abs(share - later) < 1e-4 ? later : share);
}

const startOf = (month: number) => days.slice(0, month).reduce((sum, each) => sum + each, 0);
export const daysIn = (month: number) =>
  Array.from({ length: of(days, month) }, (_, day) => startOf(month) + day);
export const monthOf = (day: number) => twelve.findLast((month) => startOf(month) <= day % 365) ?? 0;
