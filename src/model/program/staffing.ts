import { at, sumOf } from "../../lists.js";
import { daysInYear } from "../lake/calendar.js";
import { type BoatDays, type Sampling, type StationDay, sampleBoatDays } from "./boat-days.js";
import { type DayWait, dayWait, type WaitTarget } from "./day-wait.js";
import { type Estimate, weightedEstimate } from "./estimate.js";
import type { ServiceTimes } from "./service-time.js";

/** Days of a kind in a part of the season: "July, peak", "May, ordinary". */
export interface StationDayType {
  readonly id: string;
  readonly name: string;
  readonly daysPerYear: number;
  /** Boats expected in each open hour, from opening to closing; 1 to 24 hours. */
  readonly arrivalsByHour: readonly number[];
}

export interface StaffingInput {
  readonly dayTypes: readonly StationDayType[];
  readonly service: ServiceTimes;
  readonly target: WaitTarget;
  /** Largest number of inspectors that the station has room or budget for. */
  readonly mostInspectors: number;
  /** Money per inspector's hour, loading included. */
  readonly wagePerHour: number;
  readonly sampling: Sampling;
}

export interface DayTypeStaffing {
  readonly dayType: StationDayType;
  /** The least number that keeps the target, or the largest number allowed where none does. */
  readonly inspectors: number;
  readonly keepsTarget: boolean;
  /** Paid hours of one day: inspectors × open hours, and their service after closing. */
  readonly staffHoursPerDay: number;
  /** The day with 1, 2, … inspectors, up to the largest number. */
  readonly waits: readonly DayWait[];
}

/** What the station costs with the same number of inspectors on all days, and how long boats then wait. */
export interface BudgetPoint {
  readonly inspectors: number;
  /** Of all boats of the year. */
  readonly meanWaitHours: Estimate;
  readonly shareOverTarget: Estimate;
  readonly staffHoursPerYear: number;
  readonly costPerYear: number;
  /** What one more inspector on all days buys; nothing is known past the largest number. */
  readonly oneMore: OneMore | undefined;
}

interface OneMore {
  readonly boatHoursSaved: number;
  /** Boats a year that no longer wait over the target. */
  readonly boatsSaved: number;
  readonly costAdded: number;
}

export interface Staffing {
  readonly dayTypes: readonly DayTypeStaffing[];
  /** Of all boats of the year, with each day type at its own number of inspectors; so are the two below. */
  readonly meanWaitHours: Estimate;
  readonly boatsPerYear: number;
  readonly staffHoursPerYear: number;
  readonly costPerYear: number;
  /** 1, 2, … inspectors. */
  readonly curve: readonly BudgetPoint[];
}

/**
 * Least inspectors for each day type that keep the wait target, and the wait against the budget. All numbers of
 * inspectors meet the same boats. Hours after closing are paid at the same wage.
 * @throws RangeError if a number has no meaning, naming the day type
 */
export function staffing(input: StaffingInput): Staffing {
  const { dayTypes, mostInspectors, wagePerHour } = input;
  if (dayTypes.length === 0)
    throw new RangeError("no day types; give at least one with its arrivals by hour");
  if (!Number.isSafeInteger(mostInspectors) || mostInspectors < 1) {
    throw new RangeError(`largest number of inspectors is ${mostInspectors}; allowed whole numbers from 1`);
  }
  const staffed = dayTypes.map((dayType) => staffDayType(dayType, input));
  const staffHoursPerYear = staffed.reduce(
    (sum, { dayType, staffHoursPerDay }) => sum + dayType.daysPerYear * staffHoursPerDay,
    0,
  );
  const boats = staffed.map(({ dayType }) => boatsPerYear(dayType));
  return {
    dayTypes: staffed,
    meanWaitHours: weightedEstimate(
      staffed.map(({ waits, inspectors }) => at(waits, inspectors - 1).meanWaitHours),
      boats,
    ),
    boatsPerYear: sumOf(boats),
    staffHoursPerYear,
    costPerYear: staffHoursPerYear * wagePerHour,
    curve: budgetCurve(staffed, input),
  };
}

function staffDayType(dayType: StationDayType, input: StaffingInput): DayTypeStaffing {
  const { service, target, mostInspectors, sampling } = input;
  const { daysPerYear } = dayType;
  if (!(daysPerYear > 0 && daysPerYear <= daysInYear)) {
    throw new RangeError(`${dayType.id}: days a year are ${daysPerYear}; allowed above 0 to ${daysInYear}`);
  }
  const day: StationDay = { id: dayType.id, arrivalsByHour: dayType.arrivalsByHour, service };
  let boats: BoatDays | undefined;
  const drawn = () => {
    boats ??= sampleBoatDays(day, sampling);
    return boats;
  };
  const waits = Array.from({ length: mostInspectors }, (_, index) =>
    dayWait(day, index + 1, { target, drawn }),
  );
  const least = waits.find(({ keepsTarget }) => keepsTarget);
  const chosen = least ?? at(waits, mostInspectors - 1);
  return {
    dayType,
    inspectors: chosen.inspectors,
    keepsTarget: least !== undefined,
    staffHoursPerDay: paidHours(dayType, chosen),
    waits,
  };
}

const paidHours = ({ arrivalsByHour }: StationDayType, { inspectors, hoursAfterClosing }: DayWait) =>
  inspectors * arrivalsByHour.length + hoursAfterClosing.mean;

const boatsPerYear = ({ daysPerYear, arrivalsByHour }: StationDayType) => daysPerYear * sumOf(arrivalsByHour);

function budgetCurve(staffed: readonly DayTypeStaffing[], input: StaffingInput): BudgetPoint[] {
  const boats = staffed.map(({ dayType }) => boatsPerYear(dayType));
  const points = Array.from({ length: input.mostInspectors }, (_, index) => {
    const waits = staffed.map((each) => at(each.waits, index));
    const staffHoursPerYear = staffed.reduce(
      (sum, { dayType }, type) => sum + dayType.daysPerYear * paidHours(dayType, at(waits, type)),
      0,
    );
    return {
      inspectors: index + 1,
      meanWaitHours: weightedEstimate(
        waits.map(({ meanWaitHours }) => meanWaitHours),
        boats,
      ),
      shareOverTarget: weightedEstimate(
        waits.map(({ shareOverTarget }) => shareOverTarget),
        boats,
      ),
      staffHoursPerYear,
      costPerYear: staffHoursPerYear * input.wagePerHour,
    };
  });
  const total = sumOf(boats);
  return points.map((point, index) => ({ ...point, oneMore: oneMore(point, points[index + 1], total) }));
}

type Point = Omit<BudgetPoint, "oneMore">;

function oneMore(point: Point, next: Point | undefined, boats: number): OneMore | undefined {
  if (!next) return undefined;
  return {
    boatHoursSaved: boats * (point.meanWaitHours.mean - next.meanWaitHours.mean),
    boatsSaved: boats * (point.shareOverTarget.mean - next.shareOverTarget.mean),
    costAdded: next.costPerYear - point.costPerYear,
  };
}
