import { at } from "../../lists.js";
import { daysInYear, monthOfDay, monthStart } from "../../model/lake/calendar.js";
import { dimensions } from "../../units/dimensions.js";
import { elevationNumber, elevationText, type TriedDrawdown } from "./level-grid.js";

type Raw = Readonly<Record<string, unknown>>;

/** A drawdown of the search as a schedule that its author might have typed; its id and name are given where it is put. */
export function writtenSchedule({ schedule }: TriedDrawdown, units: "us" | "si"): Raw {
  if (schedule.record)
    return { record: { origin: "Found by the search", csv: csvOf(schedule.record, units) } };
  return {
    drawdown: schedule.drawdown.map(({ dayOfYear, elevation }) => ({
      on: dateText(dayOfYear),
      elevation: elevationText(elevation, units),
    })),
  };
}

function csvOf(record: NonNullable<TriedDrawdown["schedule"]["record"]>, units: "us" | "si"): string {
  const lines = record.flatMap(({ label, daily }) =>
    Array.from(
      { length: daysInYear },
      (_, day) => `${label}-${dateText(day)},${elevationNumber(at(daily, day), units)}`,
    ),
  );
  return [`date,elevation (${dimensions.elevation[units].unit})`, ...lines].join("\n");
}

function dateText(day: number): string {
  const month = monthOfDay(day);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(month + 1)}-${two(day - monthStart(month) + 1)}`;
}
