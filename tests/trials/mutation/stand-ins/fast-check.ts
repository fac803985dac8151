import { createRequire } from "node:module";
import type * as fastCheck from "fast-check";

const original = createRequire(import.meta.url)("fast-check") as typeof fastCheck;

/** Runs of a property for one mutant: most wrong formulas show in the first few. */
const mostRuns = 15;

/** `assert` with few runs, and without the search for the smallest failing case: one failure is enough. */
const assert = ((property: never, parameters: fastCheck.Parameters<unknown> = {}) =>
  original.assert(property, {
    ...parameters,
    numRuns: Math.min(parameters.numRuns ?? mostRuns, mostRuns),
    endOnFailure: true,
  })) as typeof fastCheck.assert;

// biome-ignore lint/style/noDefaultExport: stands in for a module that has one
export default { ...original, assert };
