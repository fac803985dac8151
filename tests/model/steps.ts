import fc from "fast-check";
import type { ProgramSteps } from "../../src/model/inputs.js";

/** Steps that meet every boat and set every fouled one aside, without hold, refusal, seals or exceptions. */
export const thoroughSteps: ProgramSteps = {
  coverage: 1,
  declaration: 1,
  quickCheck: 1,
  falseAlarm: 0,
  washedAnyway: 1,
  inspection: 0,
  hotWash: 0,
  hold: { share: 0, days: 0 },
  refusal: 0,
  deterrence: 0,
  seals: [],
  byClass: [],
};

export const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Any steps, with a hold and refusal, for studies of any class names. */
export const anySteps: fc.Arbitrary<ProgramSteps> = fc.record({
  coverage: share,
  declaration: share,
  quickCheck: share,
  falseAlarm: share,
  washedAnyway: share,
  inspection: share,
  hotWash: share,
  hold: fc.record({ share, days: fc.double({ min: 0, max: 40, noNaN: true }) }),
  refusal: share,
  deterrence: share,
  seals: fc.constant([]),
  byClass: fc.constant([]),
});
