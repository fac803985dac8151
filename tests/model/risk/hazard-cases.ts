import fc from "fast-check";

export const chance = fc.double({ min: 0, max: 1, noNaN: true });

/** Chances of establishment by year, and ways in which mussels are noticed and met. */
export const courseCases = fc.record({
  hazards: fc.array(chance, { minLength: 1, maxLength: 40 }),
  noticing: fc.record({
    chanceByAge: fc.array(chance, { maxLength: 12 }),
    containment: fc.option(fc.record({ success: chance, latestAge: fc.integer({ min: 1, max: 12 }) }), {
      nil: undefined,
    }),
  }),
});
