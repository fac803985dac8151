import { type Expected, inUnit } from "./expected.js";

/** Half of the width of a range as a share of the value: a range that reached 0 would hold what cannot be. */
const relative = inUnit("share")({ from: 0, below: 1 });
const logOdds = inUnit("1")({ from: 0, to: 5 });

/** How far a quantity may be off that its author typed as one number, by what it is. */
export const typedAssumptions = {
  "typed.count": relative,
  "typed.price": relative,
  "typed.dimension": relative,
  "typed.flow": relative,
  "typed.water": relative,
  "typed.time": relative,
  /** Kelvins: a difference, which no scale of temperatures shifts. */
  "typed.temperature": inUnit("1")({ from: 0, to: 10 }),
  "typed.share": logOdds,
  "typed.effect": logOdds,
  "typed.deterrence": logOdds,
  "typed.chance": logOdds,
} as const satisfies Record<string, Expected>;
