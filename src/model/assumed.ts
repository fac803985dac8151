import type { AssumptionId } from "./register/register.js";

/** Reads an assumption's value in the unit in which the register expects it; throws if no such entry exists. */
export type Assumed = (id: AssumptionId) => number;

interface Recorder {
  readonly assumed: Assumed;
  /** Ids read through this recorder, in order of first reading. */
  readonly ids: () => AssumptionId[];
}

/** Wraps a reader so that a cost line can name the assumptions behind it. */
export function recorder(source: Assumed): Recorder {
  const used = new Set<AssumptionId>();
  return {
    assumed: (id) => {
      used.add(id);
      return source(id);
    },
    ids: () => [...used],
  };
}
