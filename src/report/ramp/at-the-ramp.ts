import { counted } from "../../counted.js";
import { at } from "../../model/lists.js";
import type { StationRun } from "../../study/prepare/staffing.js";
import type { ReportContext } from "../document/context.js";
import { percent } from "../words/format.js";

/** A line for each option with steps: what it covers, and what its stations need. */
export function rampLines({ comparison, run, format }: ReportContext): string[] {
  return comparison.options.flatMap(({ result: { option } }) => {
    if (!option.steps) return [];
    const computed = run.coverage.some(({ optionId }) => optionId === option.id);
    const origin = computed ? "computed from its open hours" : "as entered";
    const station = run.staffing.find(({ optionId }) => optionId === option.id);
    const paid = option.staff.reduce((sum, { hoursPerYear }) => sum + hoursPerYear, 0);
    const hours = (value: number) => `${format.number(value, "hours")} h`;
    const covers = `${option.name}: coverage ${percent(option.steps.coverage, 3)} of launches, ${origin}`;
    const needed = station?.staffing.staffHoursPerYear ?? 0;
    const short = paid < needed ? `, ${hours(needed - paid)} short` : "";
    return [
      station
        ? `${covers}; inspectors needed ${hours(needed)} a year, staff list ${hours(paid)}${short}; ${waitText(station)}.`
        : `${covers}; no wait is judged.`,
    ];
  });
}

function waitText({ days, staffing }: StationRun): string {
  const failing = days.filter((_, index) => !at(staffing.dayTypes, index).keepsTarget).length;
  if (failing === 0) return "the target for the wait is kept on all days";
  return `the target for the wait is not kept on ${failing} of ${counted(days.length, "type")} of day and site`;
}
