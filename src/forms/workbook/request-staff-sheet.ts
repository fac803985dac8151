import { sumOf } from "../../lists.js";
import type { ReportContext } from "../../report/document/context.js";
import { capitalised } from "../../report/words/format.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import { address, columnRange, type Entry, type SheetDraft, strong, text, value } from "./sheet.js";

const heads = [
  ...["Class", "Post", "Hours paid", "Leave, h", "Training, h", "Overtime, h", "Overtime, times the wage"],
  ...["Wage an hour", "Benefits over wage", "FTE", "Hours worked", "Cost"],
];
const yearRow = 2;
const headRow = 4;
const column = (head: string) => heads.indexOf(head);

/** The staff list: full-time equivalents, hours worked and cost are formulas; none where nobody is on it. */
export function requestStaffSheet(request: TracedRequest, context: ReportContext): SheetDraft[] {
  const { staff: classes, fullTimeHours, queue } = request;
  const { staff } = context.requested.result.option;
  if (classes.length === 0) return [];
  const first = headRow + 1;
  const last = headRow + classes.length;
  const total = (head: string, result: number, look: "plain" | "cents"): Entry =>
    strong(value({ formula: `SUM(${columnRange(column(head), first, last)})`, result }, look));
  return [
    {
      name: "Request staff",
      widths: [30, 12, ...Array.from({ length: heads.length - 2 }, () => 12)],
      headRows: headRow + 1,
      rows: [
        [text("Staff in a year of the program", "title")],
        [text(`${context.run.document.money.currency} of ${context.priceYear}`, "note")],
        [text("Hours of a full-time year"), text(""), value(fullTimeHours, "plain")],
        [],
        heads.map((each) => text(each, "head")),
        ...staff.map((line, index) => staffRow(line, classes[index], first + index)),
        heads.map((head) => {
          if (head === "Class") return strong(text("All"));
          if (head === "FTE") return total(head, sumOf(classes.map(({ fullTime }) => fullTime)), "plain");
          if (head === "Hours paid")
            return total(head, sumOf(classes.map(({ hoursPaid }) => hoursPaid)), "plain");
          if (head === "Cost") return total(head, sumOf(classes.map(({ cost }) => cost.toNumber())), "cents");
          return text("");
        }),
        ...(queue ? [[], ...queueRows(queue, last + 3)] : []),
      ],
    },
  ];
}

type StaffLine = ReportContext["requested"]["result"]["option"]["staff"][number];

function staffRow(line: StaffLine, told: TracedRequest["staff"][number] | undefined, row: number): Entry[] {
  const { name, post = "", hoursPerYear, leaveHours = 0, trainingHours = 0, overtime, wage, loading } = line;
  const cell = (head: string) => address(row, column(head));
  const loaded = `${cell("Wage an hour")}*(1+${cell("Benefits over wage")})`;
  const cost = `ROUND(${cell("Hours paid")}*${loaded},2)+ROUND(${cell("Overtime, h")}*${loaded}*${cell("Overtime, times the wage")},2)`;
  return [
    text(capitalised(name)),
    text(post),
    ...[hoursPerYear, leaveHours, trainingHours, overtime?.hours ?? 0, overtime?.pay ?? 1].map((each) =>
      value(each, "plain"),
    ),
    value(wage, "plain"),
    value(loading, "percent"),
    value(
      {
        formula: `${cell("Hours paid")}/$C$${yearRow + 1}`,
        result: told?.fullTime ?? 0,
      },
      "plain",
    ),
    value(
      {
        formula: `${cell("Hours paid")}+${cell("Overtime, h")}-${cell("Leave, h")}`,
        result: told?.hoursWorked ?? 0,
      },
      "plain",
    ),
    value({ formula: cost, result: told?.cost.toNumber() ?? 0 }, "cents"),
  ];
}

/** Inspectors that the queue needs, against the list. @param row of the first */
function queueRows({ hours, listed }: NonNullable<TracedRequest["queue"]>, row: number): Entry[][] {
  const difference = {
    formula: `${address(row + 1, 2)}-${address(row, 2)}`,
    result: listed - hours,
  };
  return [
    [text("Inspectors that the queue needs, h"), text(""), value(hours, "plain")],
    [text("Inspectors on the list, h"), text(""), value(listed, "plain")],
    [text("More on the list"), text(""), value(difference, "plain")],
  ];
}
