import { sumOf } from "../../lists.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import type { ReportContext } from "../document/context.js";
import { capitalised, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** The staff list by class; absent where nobody is on it. */
export function staffTableView({ staff }: TracedRequest, context: ReportContext): TableView | undefined {
  if (staff.length === 0) return undefined;
  const { format, run, priceYear } = context;
  const hours = (value: number) => num(value === 0 ? "–" : significant(Math.round(value), 9));
  const all = (pick: (each: (typeof staff)[number]) => number) => sumOf(staff.map(pick));
  return {
    id: "table-request-staff",
    caption: `Staff in a year of the program, ${run.document.money.currency} of ${priceYear}`,
    head: head(
      "Class",
      "Post",
      num("FTE"),
      num("Hours paid"),
      num("Overtime, h"),
      num("Hours worked"),
      num("In training, h"),
      num("Benefits"),
      num("Cost"),
    ),
    rows: staff.map((each) =>
      row(
        capitalised(each.name),
        each.post ?? "–",
        num(significant(each.fullTime, 3)),
        hours(each.hoursPaid),
        hours(each.overtimeHours),
        hours(each.hoursWorked),
        hours(each.trainingHours),
        num(format.exactMoney(each.benefits.toNumber())),
        num(format.exactMoney(each.cost.toNumber())),
      ),
    ),
    total: row(
      "All",
      "",
      num(
        significant(
          all(({ fullTime }) => fullTime),
          3,
        ),
      ),
      hours(all(({ hoursPaid }) => hoursPaid)),
      hours(all(({ overtimeHours }) => overtimeHours)),
      hours(all(({ hoursWorked }) => hoursWorked)),
      hours(all(({ trainingHours }) => trainingHours)),
      num(format.exactMoney(all(({ benefits }) => benefits.toNumber()))),
      num(format.exactMoney(all(({ cost }) => cost.toNumber()))),
    ),
    compact: true,
  };
}

/** What a full-time year is, and the list against what the queue needs. */
export function staffText(
  { staff, queue, fullTimeHours }: TracedRequest,
  { format }: ReportContext,
): string[] {
  if (staff.length === 0) return [];
  const hours = (value: number) => `${significant(Math.round(value), 9)} h`;
  const year = `A full-time equivalent (FTE) is ${hours(fullTimeHours)} of straight time, leave counted and overtime not.`;
  if (!queue) return [year];
  const difference = queue.listed - queue.hours;
  const fullTime = significant(Math.abs(difference) / fullTimeHours, 2);
  return [
    `${year} The queue needs ${hours(queue.hours)} of inspectors a year (${format.money(queue.costPerYear)}); the list pays ${hours(queue.listed)}, ${hours(Math.abs(difference))} or ${fullTime} FTE ${difference < 0 ? "fewer: so much is not in the request" : "more: travel, reports and slack"}.`,
  ];
}
