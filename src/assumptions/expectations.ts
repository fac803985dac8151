import type { Expected } from "../model/register/expected.js";
import { register } from "../model/register/register.js";
import { boundsOfBoth } from "./bounds.js";
import { type NamedNumber, plansFile } from "./plans.js";
import { typicalAssumptions } from "./typical.js";
import { shortTypicals } from "./typical-short.js";

/** What an assumption is held to, and as what. */
export interface Expectation extends Expected {
  /** "the life of the plan second-line"; absent for what the model reads by the id itself. */
  readonly as?: string | undefined;
}

/** What each assumption is held to, by its id: those of the register, and the numbers that plans name. */
export function expectations(
  numbers: readonly NamedNumber[],
  problems: string[],
): ReadonlyMap<string, Expectation> {
  const found = new Map<string, Expectation>(
    Object.entries({ ...register, ...typicalAssumptions, ...shortTypicals }),
  );
  for (const { id, ...own } of numbers) {
    const known = found.get(id);
    if (known && known.unit !== own.unit) problems.push(conflict(id, known, own));
    else found.set(id, known ? { ...known, bounds: boundsOfBoth(known.bounds, own.bounds) } : own);
  }
  return found;
}

function conflict(id: string, { as = "itself", ...known }: Expectation, own: Expectation): string {
  return `${plansFile}: ${id} is read as ${as}, in ${known.unit}, and as ${own.as}, in ${own.unit}. Name another assumption for one of the two.`;
}
