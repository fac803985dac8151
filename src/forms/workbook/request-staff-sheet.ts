import { at, sumOf } from "../../lists.js";
import type { ReportContext } from "../../report/document/context.js";
import { capitalised } from "../../report/words/format.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import { number } from "./formula.js";
import type { StaffInputs } from "./program-inputs.js";
import { address, columnRange, type Entry, input, type SheetDraft, strong, text, value } from "./sheet.js";

const heads = [
  ...["Class", "Post", "Hours paid", "Leave, h", "Training, h", "Overtime, h", "Overtime, times the wage"],
  ...["Wage an hour", "Benefits over wage", "FTE", "Hours worked", "Cost"],
];
const yearRow = 2;
const headRow = 4;
const column = (head: string) => heads.indexOf(head);

/** The staff list: full-time equivalents, hours worked and cost are formulas; none where nobody is on it. */
export function requestStaffSheet(
  request: TracedRequest,
  context: ReportContext,
  inputs: readonly StaffInputs[],
): SheetDraft[] {
  const { staff: classes, fullTimeHours, queue } = request;
  const { staff } = context.requested.result.option;
  if (classes.length === 0) return [];
  const first = headRow + 1;
  const last = headRow + classes.length;
  const inspectorHours = staff
    .flatMap(({ group = "wages" }, index) =>
      group === "wages"
        ? [`${address(first + index, column("Hours paid"))}+${address(first + index, column("Overtime, h"))}`]
        : [],
    )
    .join("+");
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
        [text("Hours of a full-time year"), text(""), input(fullTimeHours, "plain")],
        [],
        heads.map((each) => text(each, "head")),
        ...staff.map((line, index) => staffRow(line, at(inputs, index), classes[index], first + index)),
        heads.map((head) => {
          if (head === "Class") return strong(text("All"));
          if (head === "FTE") return total(head, sumOf(classes.map(({ fullTime }) => fullTime)), "plain");
          if (head === "Hours paid")
            return total(head, sumOf(classes.map(({ hoursPaid }) => hoursPaid)), "plain");
          if (head === "Cost") return total(head, sumOf(classes.map(({ cost }) => cost.toNumber())), "cents");
          return text("");
        }),
        ...(queue ? [[], ...queueRows(queue, last + 3, inspectorHours || "0")] : []),
      ],
    },
  ];
}

type StaffLine = ReportContext["requested"]["result"]["option"]["staff"][number];

function staffRow(
  { name, post, leaveHours = 0, trainingHours = 0 }: StaffLine,
  { hours, wage, loading, overtime }: StaffInputs,
  told: TracedRequest["staff"][number] | undefined,
  row: number,
): Entry[] {
  const cell = (head: string) => address(row, column(head));
  const loaded = `${cell("Wage an hour")}*(1+${cell("Benefits over wage")})`;
  const cost = `ROUND(${cell("Hours paid")}*${loaded},2)+ROUND(${cell("Overtime, h")}*${loaded}*${cell("Overtime, times the wage")},2)`;
  return [
    text(capitalised(name)),
    text(post ?? ""),
    value(hours, "plain"),
    input(leaveHours, "plain"),
    input(trainingHours, "plain"),
    value(overtime?.hours ?? number(0), "plain"),
    value(overtime?.pay ?? number(1), "plain"),
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
function queueRows(
  { hours, listed }: NonNullable<TracedRequest["queue"]>,
  row: number,
  listedFormula: string,
): Entry[][] {
  const difference = {
    formula: `${address(row + 1, 2)}-${address(row, 2)}`,
    result: listed - hours,
  };
  return [
    [text("Inspectors that the queue needs, h"), text(""), value(hours, "plain")],
    [text("Inspectors on the list, h"), text(""), value({ formula: listedFormula, result: listed }, "plain")],
    [text("More on the list"), text(""), value(difference, "plain")],
  ];
}
