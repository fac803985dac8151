import { describe, expect, it } from "vitest";
import { staffTable } from "../../../src/model/program/staff-table.js";
import { wholeStudy } from "../study.js";
import { emptyOption } from "./any-option.js";

describe("the table of an option's staff", () => {
  it("has the hours, the cost and the benefits of each class", () => {
    const option = {
      ...emptyOption,
      staff: [
        {
          name: "Inspectors",
          hoursPerYear: 3120,
          wage: 20,
          loading: 0.25,
          overtime: { hours: 100, pay: 1.5 },
          leaveHours: 120,
          trainingHours: 80,
        },
        { name: "Lead", hoursPerYear: 2080, wage: 30, loading: 0 },
      ],
    };
    const told = staffTable(option, wholeStudy.money, 2080).map((each) => ({
      ...each,
      cost: each.cost.toNumber(),
      benefits: each.benefits.toNumber(),
    }));
    // By hand: 3,120 h at 25 and 100 h at 37.50; a fifth of what is paid with benefits of a quarter is benefits.
    expect(told).toEqual([
      {
        name: "Inspectors",
        post: undefined,
        fullTime: 1.5,
        hoursPaid: 3120,
        overtimeHours: 100,
        hoursWorked: 3100,
        trainingHours: 80,
        cost: 81_750,
        benefits: 16_350,
      },
      {
        name: "Lead",
        post: undefined,
        fullTime: 1,
        hoursPaid: 2080,
        overtimeHours: 0,
        hoursWorked: 2080,
        trainingHours: 0,
        cost: 62_400,
        benefits: 0,
      },
    ]);
  });
});
