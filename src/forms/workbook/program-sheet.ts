import { allOptions, type ReportContext } from "../../report/document/context.js";
import { groupNames } from "../../report/words/line-groups.js";
import { lineEntries, lineHeads } from "./line-entries.js";
import { address, addressIn, type Entry, type SheetDraft, strong, text, value } from "./sheet.js";

export interface ProgramSheet {
  readonly draft: SheetDraft;
  /** Cell of a year's sum, by the id of the option. */
  readonly sums: ReadonlyMap<string, string>;
}

const name = "Program lines";
const amountColumn = 7;

/** What each option pays and takes in a year while it runs in full in a clean lake. */
export function programSheet(context: ReportContext): ProgramSheet {
  const rows: Entry[][] = [
    [text("What each option costs in a year", "title")],
    [text(introduction(context), "note")],
    [],
    ["Option", "Group", "Line", ...lineHeads].map((each) => text(each, "head")),
  ];
  const headRows = rows.length;
  const sums = new Map<string, string>();
  for (const { option, programLines, programPerYear } of allOptions(context)) {
    const first = rows.length;
    for (const line of programLines) {
      rows.push([
        text(option.name),
        text(groupNames[line.group]),
        text(line.what),
        ...lineEntries(line, { row: rows.length, column: 3 }, context, line.unit),
      ]);
    }
    sums.set(option.id, addressIn(name, rows.length, amountColumn));
    const formula =
      programLines.length === 0
        ? "0"
        : `SUM(${address(first, amountColumn)}:${address(rows.length - 1, amountColumn)})`;
    rows.push([
      strong(text(option.name)),
      text(""),
      strong(text("Together")),
      ...["", "", "", ""].map((each) => text(each)),
      strong(value({ formula, result: programPerYear.toNumber() }, "cents")),
    ]);
  }
  return { draft: { name, widths: [34, 20, 44, 28, 14, 12, 14, 16], headRows, rows }, sums };
}

const introduction = ({ run, priceYear }: ReportContext) =>
  `${run.document.money.currency} of ${priceYear}, while the lake stays clean and programs run in full. Equipment at its yearly capital recovery; fees and other revenue bear a minus. Amount = quantity × unit rate, rounded to the cent.`;
