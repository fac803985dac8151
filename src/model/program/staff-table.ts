import type { Assumed } from "../assumed.js";
import type { MoneySettings, ProgramOption } from "../inputs.js";
import type { Money } from "../money/decimal.js";
import { totalOf } from "../money/line.js";
import { staffLines } from "./cost.js";

/** A class of staff in a year of the program in full. */
export interface StaffClass {
  readonly name: string;
  readonly post: "seasonal" | "permanent" | undefined;
  /** Straight-time hours paid over those of a full-time year, overtime left out. */
  readonly fullTime: number;
  readonly hoursPaid: number;
  readonly overtimeHours: number;
  /** Paid hours and overtime, less leave; training is worked. */
  readonly hoursWorked: number;
  readonly trainingHours: number;
  /** What it is paid for hours and overtime, with benefits and taxes. */
  readonly cost: Money;
  /** Of the cost, benefits and taxes. */
  readonly benefits: Money;
}

/** Paid hours of a full-time year, of the study's own or usual. */
export const fullTimeHoursOf = (own: number | undefined, source: Assumed): number =>
  own ?? source("request.full-time-hours");

/**
 * An option's staff list as a budget office reads it. The cost is that of its lines, to the cent.
 * @param fullTimeHours paid hours of a full-time year
 */
export function staffTable(option: ProgramOption, money: MoneySettings, fullTimeHours: number): StaffClass[] {
  return option.staff.map((each) => {
    const { name, post, hoursPerYear, loading, leaveHours = 0, trainingHours = 0 } = each;
    const overtimeHours = each.overtime?.hours ?? 0;
    const cost = totalOf(staffLines(each, option, money));
    return {
      name,
      post,
      fullTime: hoursPerYear / fullTimeHours,
      hoursPaid: hoursPerYear,
      overtimeHours,
      hoursWorked: hoursPerYear + overtimeHours - leaveHours,
      trainingHours,
      cost,
      benefits: cost.times(loading).dividedBy(1 + loading),
    };
  });
}
