import { stringify } from "csv-stringify/sync";
import { strToU8, zipSync } from "fflate";
import type { ReportView } from "../report/document/report-view.js";
import { plainMinus } from "../report/words/minus.js";
import { type TableView, tableFileName } from "../report/words/view-types.js";
import { forXml } from "../study/reading/characters.js";

/** A table of the report as a file of its own. */
export interface TableFile {
  readonly fileName: string;
  readonly caption: string;
  readonly csv: string;
}

/** Every table of the report, in its order, as it is printed. */
export function tableFiles(view: ReportView): TableFile[] {
  const tables = new Map(tablesIn(view).map((table) => [table.id, table]));
  return [...tables.values()].map((table) => ({
    fileName: tableFileName(table.id),
    caption: table.caption,
    csv: tableCsv(table),
  }));
}

/** All of them in one zip. Its files bear a fixed date, so that the same tables give the same bytes. */
export function tablesZip(files: readonly TableFile[]): Uint8Array {
  const entries = files.map(({ fileName, csv }) => [fileName, strToU8(csv)] as const);
  return zipSync(Object.fromEntries(entries), { mtime: zipDate });
}

/** The first date that a zip can hold. */
export const zipDate = "1980-01-01T00:00:00";

/** Tables stand at different depths of the view, some of them in lists. */
function tablesIn(part: unknown): TableView[] {
  if (typeof part !== "object" || part === null) return [];
  if (isTable(part)) return [part];
  return Object.values(part).flatMap(tablesIn);
}

function isTable(part: object): part is TableView {
  return "caption" in part && "head" in part && "rows" in part;
}

/** Opened by a spreadsheet program, no cell is taken for a formula; an amount keeps its minus, as such programs write it. */
function tableCsv({ caption, head, rows, total, note }: TableView): string {
  const cells = (row: { readonly cells: readonly { readonly text: string }[] }) =>
    row.cells.map(({ text }) => forXml(asFigure(text.replaceAll("\u200b", ""))));
  const records = [
    [forXml(caption)],
    head.map(({ text }) => forXml(text)),
    ...rows.map(cells),
    ...(total ? [cells(total)] : []),
    ...(note ? [[forXml(note)]] : []),
  ];
  return stringify(records, {
    bom: true,
    record_delimiter: "windows",
    cast: { string: (text) => ({ value: text, escape_formulas: !isAmount(text) }) },
  });
}

const asFigure = (text: string) => (isAmount(plainMinus(text)) ? plainMinus(text) : text);

const isAmount = (text: string) => /^-\p{Sc}?[\d,.]+%?$/u.test(text);
