import type { ReportContext } from "../../report/document/context.js";
import type { Course } from "./course-sheet.js";
import {
  both,
  either,
  exponential,
  isAbove,
  isNot,
  minus,
  number,
  oneLess,
  over,
  plus,
  sumOfProducts,
  times,
  type Worked,
  when,
  whenOrWords,
} from "./formula.js";
import { type Grid, grid } from "./grid.js";
import { type Formula, type SheetDraft, strong, text, value } from "./sheet.js";

export interface BreakEvenSheet {
  readonly draft: SheetDraft;
  /** Lowest yearly chance without the program at which it pays, or words. */
  readonly chance: Formula;
}

/** Rates of the boats without a program between which the search runs, ten in every decade, as the program searches. */
const leastRate = 1e-7;
const mostRate = 8;
const steps = 80;
/** Halvings after it: the chance is then told to ten figures. */
const halvings = 32;

const columns = { rate: 0, net: 1, low: 2, high: 3, first: 5 };
const rows = { heads: 3, through: 4, others: 5, clean: 6, established: 7, contained: 8, trial: 11 };

const introduction =
  "The net benefit at boat rates from next to nothing to near certainty; the first step in which it becomes positive is halved until it is narrow. Each trial works back from the last year: what is still to come for a lake that is clean when the year begins. Each line has both options, the one without a program on the left.";

/** @param courses without a program, and of the requested option */
export function breakEvenSheet(
  [baseline, asked]: readonly [Course, Course],
  context: ReportContext,
): BreakEvenSheet | undefined {
  const { infestedSince, comparison, horizon } = context;
  const rate = comparison.rates.ofBoats * comparison.baseline.arrivals.foundings;
  if (infestedSince !== undefined || rate === 0) return undefined;
  const sheet = grid("Break-even");
  sheet.put(0, 0, text(`The yearly chance from which “${asked.result.option.name}” pays`, "title"));
  sheet.put(1, 0, text(introduction, "note"));
  const sides = [baseline, asked].map((course, index) =>
    writeSide(sheet, course, { column: columns.first + index * (horizon + 1), years: horizon }),
  );
  writeHeads(sheet, horizon);
  const net = (row: number) => {
    const [without, withIt] = sides.map((side) => side(row));
    if (!without || !withIt) throw new Error("two options are weighed");
    return sheet.put(row, columns.net, value(minus(without, withIt), "cents"));
  };
  const { low, high, least } = writeSearch(sheet, net);
  const at = (found: Worked) =>
    oneLess(times(exponential(minus(number(0), found)), baseline.columns.others(0)));
  const found = at(over(plus(low, high), number(2)));
  const paysAtLeast = isAbove(least, number(0));
  return {
    draft: sheet.draft({
      widths: [18, 18, 16, 16, 18, ...Array.from({ length: 2 * horizon + 1 }, () => 13)],
      headRows: 0,
    }),
    chance: whenOrWords(
      either(paysAtLeast, isAbove(high, number(0))),
      when(paysAtLeast, at(number(leastRate)), found),
      "none",
    ),
  };
}

function writeHeads(sheet: Grid, horizon: number): void {
  const label = (row: number, name: string) => sheet.put(row, columns.first - 1, text(name));
  label(rows.through, "Foundings through");
  label(rows.others, "Clean by other ways");
  label(rows.clean, "Program in a clean year");
  label(rows.established, "Infestation from this year");
  label(rows.contained, "Eradicated in its year");
  sheet.putRow(
    rows.trial - 1,
    ["Rate of the boats", "Net benefit", "Low end", "High end"].map((each) => text(each, "head")),
  );
  for (const side of [0, 1]) {
    for (let year = 0; year < horizon; year++) {
      sheet.put(rows.heads, columns.first + side * (horizon + 1) + year, text(`Year ${year + 1}`, "head"));
    }
  }
}

/** Writes what an option costs by the year in which mussels establish. @returns what it costs at the rate of a row */
function writeSide(
  sheet: Grid,
  { columns: course, containedChance }: Course,
  { column, years }: { column: number; years: number },
): (row: number) => Worked {
  for (let year = 0; year < years; year++) {
    const put = (row: number, formula: Worked, look: "percent" | "factor" | "cents") =>
      sheet.put(row, column + year, value(formula, look));
    put(rows.through, course.through(year), "percent");
    put(rows.others, course.others(year), "factor");
    put(rows.clean, course.clean(year), "cents");
    put(rows.established, course.established(year), "cents");
    if (containedChance) {
      put(rows.contained, times(containedChance, course.tried(year)), "factor");
    }
  }
  return (row) => {
    const rate = sheet.at(row, columns.rate);
    for (let year = years - 1; year >= 0; year--) {
      const own = (of: number) => sheet.at(of, column + year);
      const stays = times(exponential(times(minus(number(0), rate), own(rows.through))), own(rows.others));
      const next = year === years - 1 ? number(0) : sheet.at(row, column + year + 1);
      const after =
        containedChance && year < years - 1
          ? [
              sumOfProducts(
                sheet.across(rows.contained, column, column + years - 2 - year),
                sheet.across(row, column + year + 1, column + years - 1),
              ),
            ]
          : [];
      const infested = plus(own(rows.established), ...after);
      const saved = minus(plus(own(rows.clean), next), infested);
      sheet.put(row, column + year, value(plus(infested, times(stays, saved)), "cents"));
    }
    return sheet.at(row, column);
  };
}

function writeSearch(sheet: Grid, netIn: (row: number) => Worked) {
  const put = (row: number, column: number, formula: Worked) =>
    sheet.put(row, column, value(formula, "exact"));
  const ratio = (mostRate / leastRate) ** (1 / steps);
  let [low, high] = [number(0), number(0)];
  let least = number(0);
  let before: Worked | undefined;
  for (let step = 0; step <= steps; step++) {
    const row = rows.trial + step;
    const rate = sheet.put(
      row,
      columns.rate,
      value({ formula: String(leastRate * ratio ** step), result: leastRate * ratio ** step }, "exact"),
    );
    const net = netIn(row);
    if (before) {
      const turns = both(isAbove(net, number(0)), isNot(isAbove(before, number(0))));
      const isFound = isAbove(high, number(0));
      low = put(
        row,
        columns.low,
        when(isFound, low, when(turns, sheet.at(row - 1, columns.rate), number(0))),
      );
      high = put(row, columns.high, when(isFound, high, when(turns, rate, number(0))));
    } else least = net;
    before = net;
  }
  const start = rows.trial + steps + 2;
  sheet.put(start - 1, 0, strong(text("Halved")));
  for (let halving = 0; halving < halvings; halving++) {
    const row = start + halving;
    const middle = put(row, columns.rate, over(plus(low, high), number(2)));
    const gains = isAbove(netIn(row), number(0));
    const [below, above] = [when(gains, low, middle), when(gains, middle, high)];
    low = put(row, columns.low, below);
    high = put(row, columns.high, above);
  }
  return { low, high, least };
}
