import { at } from "../../lists.js";
import { type BoatDays, requireStationDay, type StationDay } from "./boat-days.js";
import { type SteadyQueue, shareWaitingOver } from "./erlang-c.js";
import { type Estimate, meanEstimate, ratioEstimate } from "./estimate.js";
import { dayTotals, hourMean, type ServedDays, serveDays } from "./queue-simulation.js";
import { meanServiceHours } from "./service-time.js";
import { type HourState, hourState, type NotSteady } from "./steady-hour.js";

/** At least this share of a day's boats shall wait no longer than so many hours. */
export interface WaitTarget {
  readonly share: number;
  readonly hours: number;
}

/** Erlang C where the hour and all before it are steady; otherwise simulation, because of what is named. */
export type Judgement =
  | { readonly method: "erlang-c" }
  | { readonly method: "simulation"; readonly because: NotSteady | "earlier-hour-not-steady" };

/** One open hour of a mean day. The waits are those of the boats that arrive in it, whenever they are served. */
interface HourWait {
  readonly judgement: Judgement;
  /** Work that arrives over what the inspectors can do, λ s/c; above 1 the queue grows. */
  readonly utilisation: number;
  readonly boats: number;
  /** Sum over the boats, boat-hours. */
  readonly waitHours: number;
  readonly boatsOver: number;
}

export interface DayWait {
  readonly inspectors: number;
  readonly hours: readonly HourWait[];
  /** Of all boats of the day, also those that do not wait. */
  readonly meanWaitHours: Estimate;
  readonly shareOverTarget: Estimate;
  /** Inspectors' hours of service after closing, for boats that came before. */
  readonly hoursAfterClosing: Estimate;
  /** By the estimate, whatever its standard error. */
  readonly keepsTarget: boolean;
}

/**
 * The wait on a day with so many inspectors. Erlang C judges the hours up to the first that is not steady
 * (`hourState`); from there the day is simulated to its end, since its queue may outlast the hour. Erlang C leaves
 * out that a station opens without a queue, and errs to the long side there. Rule and method follow the practice of
 * staffing by stationary periods, whose errors Green, Kolesar and Soares 2001 (abstract only) describe.
 * @param drawn the day's boats, asked for only if an hour is simulated
 * @throws RangeError if a number of the day or of inspectors has no meaning
 */
export function dayWait(
  day: StationDay,
  inspectors: number,
  { target, drawn }: { readonly target: WaitTarget; readonly drawn: () => BoatDays },
): DayWait {
  requireStationDay(day);
  const states = day.arrivalsByHour.map((arrivals) => hourState(arrivals, inspectors, day.service));
  const queues = leadingQueues(states);
  const steady = queues.map((queue, hour) => steadyHour(queue, at(day.arrivalsByHour, hour), target.hours));
  const waits =
    queues.length === states.length
      ? {
          ...steadyWaits(steady),
          hoursAfterClosing: exactly(workLeftHours(day, at(queues, queues.length - 1), inspectors)),
        }
      : simulatedWaits(steady, serveDays(drawn(), inspectors, target.hours), states);
  return { inspectors, ...waits, keepsTarget: 1 - waits.shareOverTarget.mean >= target.share };
}

type Waits = Omit<DayWait, "inspectors" | "keepsTarget">;

const exactly = (mean: number): Estimate => ({ mean, standardError: 0 });

function leadingQueues(states: readonly HourState[]): SteadyQueue[] {
  const queues: SteadyQueue[] = [];
  for (const state of states) {
    if (state.kind !== "steady") break;
    queues.push(state.queue);
  }
  return queues;
}

function steadyHour(queue: SteadyQueue, boats: number, targetHours: number): HourWait {
  return {
    judgement: { method: "erlang-c" },
    utilisation: queue.utilisation,
    boats,
    waitHours: boats * queue.meanWaitHours,
    boatsOver: boats * shareWaitingOver(queue, targetHours),
  };
}

/** Each boat in service or in the queue has s left on average, since service is exponential: (a + Lq) s. */
function workLeftHours(
  { service }: StationDay,
  { utilisation, meanWaiting }: SteadyQueue,
  inspectors: number,
) {
  return (utilisation * inspectors + meanWaiting) * meanServiceHours(service);
}

function totals(hours: readonly HourWait[]) {
  const total = (pick: (hour: HourWait) => number) => hours.reduce((sum, hour) => sum + pick(hour), 0);
  return {
    boats: total(({ boats }) => boats),
    waitHours: total(({ waitHours }) => waitHours),
    boatsOver: total(({ boatsOver }) => boatsOver),
  };
}

function steadyWaits(hours: readonly HourWait[]): Omit<Waits, "hoursAfterClosing"> {
  const { boats, waitHours, boatsOver } = totals(hours);
  return { hours, meanWaitHours: exactly(waitHours / boats), shareOverTarget: exactly(boatsOver / boats) };
}

/** The steady hours at their exact means, and the rest as served. */
function simulatedWaits(
  steady: readonly HourWait[],
  served: ServedDays,
  states: readonly HourState[],
): Waits {
  const from = steady.length;
  const exact = totals(steady);
  const boats = dayTotals(served, served.boats, from).map((each) => each + exact.boats);
  const perBoat = (table: "waitHours" | "boatsOver") =>
    ratioEstimate(
      dayTotals(served, served[table], from).map((each) => each + exact[table]),
      boats,
    );
  return {
    hours: [...steady, ...states.slice(from).map((state, index) => servedHour(served, from + index, state))],
    meanWaitHours: perBoat("waitHours"),
    shareOverTarget: perBoat("boatsOver"),
    hoursAfterClosing: meanEstimate(served.hoursAfterClosing),
  };
}

function servedHour(served: ServedDays, hour: number, state: HourState): HourWait {
  const because = state.kind === "steady" ? "earlier-hour-not-steady" : state.because;
  return {
    judgement: { method: "simulation", because },
    utilisation: state.utilisation,
    boats: hourMean(served, served.boats, hour),
    waitHours: hourMean(served, served.waitHours, hour),
    boatsOver: hourMean(served, served.boatsOver, hour),
  };
}
