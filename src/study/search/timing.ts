import { at } from "../../lists.js";
import type { YearShare } from "../../model/search/evaluate.js";
import type { Placed, Searching } from "./points.js";
import type { Timing } from "./result.js";

const waits = [1, 2, 3, 5];
const ends = [5, 10, 15, 20];
const idle: YearShare = { reach: 0, cost: 0 };

/** The option that the search starts from, begun later or ended earlier. What it grows by begins when it does. */
export function timings({ plan, of }: Searching): Timing[] {
  const start: Placed = { set: 0, taken: at(plan.sets, 0).own };
  const own = plan.ownYears;
  const timing = (what: Timing["what"], years: number, shares: readonly YearShare[]): Timing => {
    const { chance, program, loss, cost } = of(start, shares);
    return { what, years, chance, program, loss, cost };
  };
  const later = (years: number) => own.map((_, year) => (year < years ? idle : at(own, year - years)));
  const ended = (years: number) => own.map((share, year) => (year < years ? share : idle));
  const within = (years: number) => years < own.length;
  return [
    timing("from", 0, own),
    ...waits.filter(within).map((years) => timing("from", years, later(years))),
    ...ends.filter(within).map((years) => timing("until", years, ended(years))),
  ];
}

/** What leaving the program out in one year alone would cost, less what it saves: for each year of the horizon. */
export function worthByYear({ plan, of }: Searching): number[] {
  const start: Placed = { set: 0, taken: at(plan.sets, 0).own };
  const own = plan.ownYears;
  const whole = of(start).cost;
  return own.map(
    (_, year) =>
      of(
        start,
        own.map((share, each) => (each === year ? idle : share)),
      ).cost - whole,
  );
}
