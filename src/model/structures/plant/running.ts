import { at } from "../../../lists.js";
import { type ByMonth, daysOf, hoursPerDay } from "../../lake/calendar.js";
import type { Hydropower } from "../inputs.js";

/** How one unit runs, month by month. */
export interface Running {
  /** Flow while it runs, m³/s; 0 in a month in which it stands. */
  readonly flow: ByMonth;
  readonly hours: ByMonth;
  /** Hours running over those of the month. */
  readonly share: ByMonth;
  /** Where it comes from: entered, taken from the rated flow, or the monthly mean in all hours. */
  readonly from: "entry" | "rated flow" | "monthly mean";
}

const hoursOf = (month: number) => daysOf(month) * hoursPerDay;

/**
 * The flow while a unit runs and its hours: those that are entered, or of the plant's n units nr running on average
 * τ = nr τm/n. Of a monthly mean alone the unit is taken to run at the turbine's rated flow, τ = Q τm/Qr; where that is
 * not known it runs at the mean in all hours of the month, τm.
 */
export function plantRunning(plant: Hydropower): Running {
  const { running, turbine, flow = [] } = plant;
  if (running) {
    return runningOf("entry", running.flow, (month) => enteredHours(plant, month));
  }
  if (!turbine) {
    return runningOf("monthly mean", flow, hoursOf);
  }
  const { ratedFlow } = turbine;
  const rated = flow.map((mean) => (mean > 0 ? ratedFlow : 0));
  return runningOf("rated flow", rated, (month) => (at(flow, month) / ratedFlow) * hoursOf(month));
}

/** A month without hours has no flow, and one without flow no hours. */
function runningOf(from: Running["from"], flow: ByMonth, hoursIn: (month: number) => number): Running {
  const hours = flow.map((each, month) => (each > 0 ? hoursIn(month) : 0));
  return {
    flow: flow.map((each, month) => (at(hours, month) > 0 ? each : 0)),
    hours,
    share: hours.map((each, month) => each / hoursOf(month)),
    from,
  };
}

function enteredHours({ running, units }: Hydropower, month: number): number {
  if (running?.hours) return at(running.hours, month);
  return running?.units ? (at(running.units, month) / units) * hoursOf(month) : 0;
}
