import { describe, expect, it } from "vitest";
import { foundCourse } from "../../../src/model/risk/course.js";
import { stateProbabilities } from "../../../src/model/risk/state-probabilities.js";

const factors = [1, 0.9, 0.8, 0.7, 0.6];

describe("the course once mussels are found", () => {
  it("is that of a lake infested for certain in year 1 and noticed for certain in year 2, by hand", () => {
    const containment = { success: 0.25, latestAge: 2 };
    const states = stateProbabilities([1, 0, 0, 0, 0], { chanceByAge: [0, 1], containment });
    const course = foundCourse(states, factors, { success: 0.25, cleanYears: 2 });
    expect(course.times).toEqual({ found: 1, tried: 1, contained: 0.25 });
    expect(course.found).toBeCloseTo(0.9, 12);
    expect(course.tried).toBeCloseTo(0.9, 12);
    // Known in year 2, and from then on where the attempt failed.
    expect(course.known).toBeCloseTo(0.9 + 0.75 * (0.8 + 0.7 + 0.6), 12);
    // A success in year 2 is watched in years 3 and 4, and off the list at the end of year 4.
    expect(course.watched).toBeCloseTo(0.25 * (0.8 + 0.7), 12);
    expect(course.delisted).toBeCloseTo(0.25 * 0.7, 12);
  });

  it("tries nothing where mussels are found late", () => {
    const containment = { success: 0.25, latestAge: 1 };
    const states = stateProbabilities([1, 0, 0, 0, 0], { chanceByAge: [0, 1], containment });
    const course = foundCourse(states, factors, { success: 0.25, cleanYears: 2 });
    expect(course.times).toEqual({ found: 1, tried: 0, contained: 0 });
    expect(course.watched).toBe(0);
  });

  it("finds no more often than mussels come, also where they come again", () => {
    const hazards = [0.3, 0.2, 0.4, 0.1, 0.3];
    const containment = { success: 0.6, latestAge: 3 };
    const states = stateProbabilities(hazards, { chanceByAge: [0.2, 0.5, 0.5, 0.5, 0.5], containment });
    const { times } = foundCourse(states, factors, { success: 0.6, cleanYears: 3 });
    const begun = states.reduce(
      (sum, { unnoticed, noticed }, year) => sum + (unnoticed[year] ?? 0) + (noticed[year] ?? 0),
      0,
    );
    expect(times.found).toBeLessThanOrEqual(begun);
    expect(times.tried).toBeLessThanOrEqual(times.found);
    expect(times.contained).toBeCloseTo(0.6 * times.tried, 12);
  });
});
