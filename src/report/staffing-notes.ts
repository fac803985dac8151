import { at } from "../model/lake/calendar.js";
import type { Judgement } from "../model/program/day-wait.js";
import type { ReportContext } from "./context.js";
import { listedWithin, significant } from "./format.js";
import type { Station } from "./station.js";

/** What a reader should hold the figures of a station against. */
export function staffingNotes(station: Station, context: ReportContext): string[] {
  return [
    tooFewText(station),
    closeText(station),
    staffText(station, context),
    boatsText(station, context),
    methodText(station),
    "All inspectors of the option serve one queue, first come first served. Ramps with queues of their own wait longer with as many inspectors, and each needs at least one while it is open.",
  ].filter((text) => text !== "");
}

function tooFewText({ run }: Station): string {
  const names = run.staffing.dayTypes
    .filter(({ keepsTarget }) => !keepsTarget)
    .map(({ dayType }) => `“${dayType.name}”`);
  if (names.length === 0) return "";
  return `Even ${run.input.mostInspectors} inspectors, the most allowed, do not keep the target on ${listedWithin(names, names.length)}.`;
}

/** Standard errors within which a figure is told as close. */
const closeErrors = 2;

/** Day types whose least number might be another if other days were drawn. */
function closeText({ run }: Station): string {
  const names = run.staffing.dayTypes
    .filter(({ waits, inspectors, keepsTarget }) => {
      const { mean, standardError } = at(waits, inspectors - 1).shareOverTarget;
      return keepsTarget && 1 - mean - closeErrors * standardError < run.input.target.share;
    })
    .map(({ dayType }) => `“${dayType.name}”`);
  if (names.length === 0) return "";
  return `On ${listedWithin(names, names.length)} the target is kept by less than ${closeErrors} standard errors: one more inspector may be needed.`;
}

function staffText({ run }: Station, context: ReportContext): string {
  const { format } = context;
  const hours = (value: number) => `${format.number(value, "hours")} h`;
  const { staff } = context.run.document.options.find(({ id }) => id === run.optionId) ?? { staff: [] };
  const paid = staff.reduce((sum, { hoursPerYear }) => sum + hoursPerYear, 0);
  const needed = run.staffing.staffHoursPerYear;
  const lines = staff.map(({ name, hoursPerYear }) => `${name} ${hours(hoursPerYear)}`);
  const which = lines.length > 1 ? ` (${listedWithin(lines, lines.length)})` : "";
  const short = paid < needed ? ` The list is ${hours(needed - paid)} short.` : "";
  const target = run.staffing.dayTypes.every(({ keepsTarget }) => keepsTarget)
    ? "the target needs"
    : "the table above takes";
  return `The staff list pays ${hours(paid)} a year${which}; ${target} ${hours(needed)} at the station.${short}`;
}

function boatsText({ run }: Station, context: ReportContext): string {
  const result = context.comparison.options.find(
    ({ result: { option } }) => option.id === run.optionId,
  )?.result;
  const checked = result?.arrivals.classes.reduce((sum, each) => sum + each.checked, 0) ?? 0;
  return `The day types bring ${significant(run.staffing.boatsPerYear, 3)} boats a year; by its steps the option checks ${significant(checked, 3)}.`;
}

type Reason = Extract<Judgement, { method: "simulation" }>["because"];

const reasons: Record<Reason, string> = {
  "service-not-exponential":
    "the time per boat, set-aside boats included, is not spread as Erlang C takes it",
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
  return `Simulated are ${replications} days of each type (seed ${seed}), where ${listedWithin([...because], because.size)}; ± is one standard error of the mean. Hours judged by Erlang C have none.`;
}
