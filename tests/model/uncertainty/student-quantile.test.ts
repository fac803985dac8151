import { expect, it } from "vitest";
import { studentQuantile } from "../../../src/model/uncertainty/student-quantile.js";

it.each([
  // Printed tables of Student's t (from memory).
  [0.975, 1, 12.706],
  [0.975, 3, 3.182],
  [0.975, 15, 2.131],
  [0.95, 10, 1.812],
  [0.9, 30, 1.31],
  [0.025, 15, -2.131],
  [0.5, 4, 0],
])("the %d quantile of Student's t with %d degrees of freedom is %d", (chance, degrees, expected) => {
  expect(studentQuantile(chance, degrees)).toBeCloseTo(expected, 3);
});

it("refuses a chance of 1 and no degrees of freedom", () => {
  expect(() => studentQuantile(1, 5)).toThrow("chance is 1; allowed: above 0 and below 1");
  expect(() => studentQuantile(0.9, 0)).toThrow("degrees of freedom is 0; allowed: whole numbers from 1");
});
