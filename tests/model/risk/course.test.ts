import { describe, expect, it } from "vitest";
import { type FoundPayments, foundCourse, phaseWorth } from "../../../src/model/risk/course.js";
import { stateProbabilities } from "../../../src/model/risk/state-probabilities.js";

const factors = [1, 0.9, 0.8, 0.7, 0.6];

/** Present value of 1 each time, or a year. */
const worth = (
  payments: FoundPayments,
  when: "found" | "tried" | "known" | "watched" | "delisted",
  fromAge = 0,
) => phaseWorth({ when, parts: [{ amount: 1, fromAge, inYear: factors }] }, payments);

describe("the course once mussels are found", () => {
  it("is that of a lake infested for certain in year 1 and noticed for certain in year 2, by hand", () => {
    const containment = { success: 0.25, latestAge: 2 };
    const states = stateProbabilities([1, 0, 0, 0, 0], { chanceByAge: [0, 1], containment });
    const { times, payments } = foundCourse(states, { success: 0.25, cleanYears: 2 });
    expect(times).toEqual({ found: 1, tried: 1, contained: 0.25, returned: 0 });
    expect(worth(payments, "found")).toBeCloseTo(0.9, 12);
    expect(worth(payments, "tried")).toBeCloseTo(0.9, 12);
    // Known in year 2, and from then on where the attempt failed; from the third year of the infestation on 0.9 less.
    expect(worth(payments, "known")).toBeCloseTo(0.9 + 0.75 * (0.8 + 0.7 + 0.6), 12);
    expect(worth(payments, "known", 2)).toBeCloseTo(0.75 * (0.8 + 0.7 + 0.6), 12);
    // A success in year 2 is watched in years 3 and 4, and off the list at the end of year 4.
    expect(worth(payments, "watched")).toBeCloseTo(0.25 * (0.8 + 0.7), 12);
    expect(worth(payments, "delisted")).toBeCloseTo(0.25 * 0.7, 12);
  });

  it("tries nothing where mussels are found late", () => {
    const containment = { success: 0.25, latestAge: 1 };
    const states = stateProbabilities([1, 0, 0, 0, 0], { chanceByAge: [0, 1], containment });
    const { times, payments } = foundCourse(states, { success: 0.25, cleanYears: 2 });
    expect(times).toEqual({ found: 1, tried: 0, contained: 0, returned: 0 });
    expect(worth(payments, "watched")).toBe(0);
  });

  it("finds no more often than mussels come, also where they come again", () => {
    const hazards = [0.3, 0.2, 0.4, 0.1, 0.3];
    const containment = { success: 0.6, latestAge: 3 };
    const states = stateProbabilities(hazards, { chanceByAge: [0.2, 0.5, 0.5, 0.5, 0.5], containment });
    const { times } = foundCourse(states, { success: 0.6, cleanYears: 3 });
    const begun = states.reduce(
      (sum, { unnoticed, noticed }, year) => sum + (unnoticed[year] ?? 0) + (noticed[year] ?? 0),
      0,
    );
    expect(times.found).toBeLessThanOrEqual(begun);
    expect(times.tried).toBeLessThanOrEqual(times.found);
    expect(times.contained).toBeCloseTo(0.6 * times.tried, 12);
    const never = hazards.reduce((clean, hazard) => clean * (1 - hazard), 1);
    expect(times.returned).toBeCloseTo(begun - (1 - never), 12);
    expect(times.returned).toBeGreaterThan(0.01);
  });
});
