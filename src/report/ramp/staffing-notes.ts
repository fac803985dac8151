import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { Judgement } from "../../model/program/day-wait.js";
import type { DayTypeStaffing } from "../../model/program/staffing.js";
import { type ReportContext, tracedOf } from "../document/context.js";
import { listedWithin } from "../words/format.js";
import { hasSites, type Station } from "./station.js";

/** What a reader should hold the figures of a station against. */
export function staffingNotes(station: Station, context: ReportContext): string[] {
  return [
    tooFewText(station),
    closeText(station),
    staffText(station, context),
    methodText(station),
    queueText(station),
  ].filter((text) => text !== "");
}

/** Days that a note speaks of, with their sites where these are told apart. */
function daysText(station: Station, isMeant: (staffed: DayTypeStaffing) => boolean): string | undefined {
  const { days, staffing } = station.run;
  const names = days
    .filter((_, index) => isMeant(at(staffing.dayTypes, index)))
    .map(({ name, siteName }) => (hasSites(station) ? `“${name}” at ${siteName}` : `“${name}”`));
  return names.length === 0 ? undefined : listedWithin(names, names.length);
}

function tooFewText(station: Station): string {
  const days = daysText(station, ({ keepsTarget }) => !keepsTarget);
  if (days === undefined) return "";
  const most = station.run.input.mostInspectors;
  const number = counted(most, "inspector");
  return `Even ${number}, the most allowed${hasSites(station) ? " at a site" : ""}, ${most === 1 ? "does" : "do"} not keep the target on ${days}.`;
}

/** Standard errors within which a figure is told as close. */
const closeErrors = 2;

/** Days whose least number might be another if other days were drawn. */
function closeText(station: Station): string {
  const { share } = station.run.input.target;
  const days = daysText(station, ({ waits, inspectors, keepsTarget }) => {
    const { mean, standardError } = at(waits, inspectors - 1).shareOverTarget;
    return keepsTarget && 1 - mean - closeErrors * standardError < share;
  });
  if (days === undefined) return "";
  return `On ${days} the target is kept by less than ${closeErrors} standard errors: one more inspector may be needed.`;
}

function staffText(station: Station, context: ReportContext): string {
  const { run } = station;
  const { format } = context;
  const hours = (value: number) => `${format.number(value, "hours")} h`;
  const { staff } = context.run.document.options.find(({ id }) => id === run.optionId) ?? { staff: [] };
  const { staffHours: all, inspectorHours: paid } = tracedOf(context, run.optionId);
  const needed = run.staffing.staffHoursPerYear;
  const lines = staff.map(
    ({ name, hoursPerYear, people }) => `${name} ${hours(hoursPerYear)}${peopleText(people)}`,
  );
  const which = lines.length > 1 ? ` (${listedWithin(lines, lines.length)})` : "";
  const ofThem = all === paid ? "" : `, ${hours(paid)} of it inspectors`;
  const short = paid < needed ? ` The list is ${hours(needed - paid)} of inspectors short.` : "";
  const target = run.staffing.dayTypes.every(({ keepsTarget }) => keepsTarget)
    ? "the target needs"
    : "the table above takes";
  return `The staff list pays ${hours(all)} a year${which}${ofThem}; ${target} ${hours(needed)} at the ${hasSites(station) ? "sites" : "station"}.${short}`;
}

const peopleText = (people: number | undefined) =>
  people === undefined ? "" : ` by ${counted(people, "person", "people")}`;

function queueText(station: Station): string {
  return hasSites(station)
    ? "Each site has a queue of its own, first come first served, and at least one inspector while it is open; none is sent to another site on the same day."
    : "All inspectors of the option serve one queue, first come first served. Ramps with queues of their own wait longer with as many inspectors, and each needs at least one while it is open: boats.sites tells them apart.";
}

type Reason = Extract<Judgement, { method: "simulation" }>["because"];

const reasons: Record<Reason, string> = {
  "service-not-exponential":
    "the time per boat, boats held for full inspection included, is not spread as Erlang C takes it",
  overloaded: "more work comes in an hour than the inspectors can do",
  "slow-to-settle": "a queue does not settle within a tenth of its hour",
  "earlier-hour-not-steady": "a queue of an hour before may last on",
};

function methodText({ run }: Station): string {
  const { dayTypes } = run.staffing;
  const { replications, seed } = run.input.sampling;
  const judgements = dayTypes.flatMap(({ waits, inspectors }) =>
    at(waits, inspectors - 1).hours.map(({ judgement }) => judgement),
  );
  const because = new Set(
    judgements.flatMap((each) => (each.method === "simulation" ? [reasons[each.because]] : [])),
  );
  if (because.size === 0)
    return "Judged by Erlang C, hour by hour: service is near exponential and queues settle.";
  return `${replications} days of each type were simulated (seed ${seed}), where ${listedWithin([...because], because.size)}; ± is one standard error of the mean. Hours judged by Erlang C have none.`;
}
