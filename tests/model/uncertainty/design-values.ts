import { at } from "../../../src/lists.js";
import type { Shares } from "../../../src/model/uncertainty/latin-hypercube.js";
import type { DesignValues, TwoSamples } from "../../../src/model/uncertainty/sensitivity-design.js";

/** Runs a function of named shares over the two samples (A, B and A_B of Saltelli and others 2010). */
export function designValues(
  { first, second }: TwoSamples,
  evaluate: (share: (id: string) => number) => number,
): DesignValues {
  const count = first.values().next().value?.length ?? 0;
  const run = (from: (id: string) => Shares) =>
    Array.from({ length: count }, (_, draw) => evaluate((id) => at(from(id).get(id) ?? [], draw)));
  return {
    first: run(() => first),
    second: run(() => second),
    exchanged: new Map([...first.keys()].map((id) => [id, run((asked) => (asked === id ? second : first))])),
  };
}
