/** A figure that is not what was issued. */
export interface FigureDifference {
  /** Where it stands in the results: "options.1.netBenefit". */
  readonly place: string;
  readonly issued: string;
  readonly recomputed: string;
}

interface FigureComparison {
  /** Figures and words that were held against each other. */
  readonly compared: number;
  readonly differences: readonly FigureDifference[];
}

/** Amounts are told to the cent; another machine's last digit may fall on its other side. */
const amountTolerance = 0.011;
/** Of numbers that are not amounts: far below what any page prints. */
const relativeTolerance = 1e-9;

const amount = /^-?\d+\.\d\d$/;

/** What reports of earlier versions hold and this one does not work out: shares of the variance of the net benefit. */
const noLongerWorkedOut = /^odds\.matters\.shares\./;

/** Holds every leaf of two results against each other. @param leftOut parts that are not compared, by their first name */
export function figureDifferences(
  issued: unknown,
  recomputed: unknown,
  leftOut: readonly string[] = [],
): FigureComparison {
  const [before, after] = [issued, recomputed].map((each) => leaves(each, leftOut));
  const all = new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])]);
  const places = [...all].filter((place) => !noLongerWorkedOut.test(place));
  const differences = places.flatMap((place) => {
    const [old, now] = [before?.get(place), after?.get(place)];
    return alike(old, now) ? [] : [{ place, issued: shownValue(old), recomputed: shownValue(now) }];
  });
  return { compared: places.length, differences };
}

/** What stands for a figure that is on one side alone. */
export const nothing = "nothing";

const shownValue = (value: unknown) => (value === undefined ? nothing : String(value));

function alike(issued: unknown, recomputed: unknown): boolean {
  if (typeof issued === "number" && typeof recomputed === "number") {
    const size = Math.max(1, Math.abs(issued), Math.abs(recomputed));
    return Math.abs(issued - recomputed) <= size * relativeTolerance;
  }
  if (typeof issued === "string" && typeof recomputed === "string" && amount.test(issued)) {
    return amount.test(recomputed) && Math.abs(Number(issued) - Number(recomputed)) <= amountTolerance;
  }
  return issued === recomputed;
}

function leaves(results: unknown, leftOut: readonly string[]): Map<string, unknown> {
  const found = new Map<string, unknown>();
  const walk = (part: unknown, path: readonly string[]): void => {
    if (typeof part !== "object" || part === null) {
      found.set(path.join("."), part);
      return;
    }
    for (const [key, child] of Object.entries(part)) {
      if (path.length > 0 || !leftOut.includes(key)) walk(child, [...path, key]);
    }
  };
  walk(results, []);
  return found;
}
