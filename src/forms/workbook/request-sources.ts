import { centsPerUnit } from "../../model/money/decimal.js";
import type { RequestSource } from "../../study/traced/traced-request.js";
import { address, type Entry, input, text } from "./sheet.js";

/** Terms of a source, in the columns after its name. */
export const termHeads = ["Share", "Amount a year", "Cap a year", "Match", "From", "To"];
const columnOf = (term: string) => 1 + termHeads.indexOf(term);

export function termEntries({ share, amount, cap, match, from, to }: RequestSource): Entry[] {
  const money = (cents: number | undefined) =>
    cents === undefined ? text("") : input(cents / centsPerUnit, "cents");
  const plain = (each: number | undefined, look: "percent" | "whole") =>
    each === undefined ? text("") : input(each, look);
  return [
    amount === undefined ? input(share ?? 1, "percent") : text(""),
    money(amount),
    money(cap),
    plain(match, "percent"),
    plain(from, "whole"),
    plain(to, "whole"),
  ];
}

/** Where a source stands, and the cells of a year that it rests on. */
export interface SourceRow {
  readonly row: number;
  readonly yearCell: (year: number) => string;
  /** Cells of what it may pay for. */
  readonly eligible: (year: number) => readonly string[];
  /** Formula of what is left to pay for. */
  readonly left: (year: number) => string;
}

/** What a source pays in a year, negative: the least of its terms and of what is left, while it runs. */
export function sourceFormula(source: RequestSource, place: SourceRow, year: number): string {
  const term = (name: string) => address(place.row, columnOf(name));
  const eligible = `SUM(${place.eligible(year).join(",")})`;
  const least = [
    source.amount === undefined ? `ROUND(${term("Share")}*${eligible},2)` : term("Amount a year"),
    ...(source.cap === undefined ? [] : [term("Cap a year")]),
    source.match === undefined ? eligible : `ROUNDDOWN((1-${term("Match")})*${eligible},2)`,
    place.left(year),
  ];
  const runs = [
    ...(source.from === undefined ? [] : [`${place.yearCell(year)}>=${term("From")}`]),
    ...(source.to === undefined ? [] : [`${place.yearCell(year)}<=${term("To")}`]),
  ];
  const paid = `-MAX(0,MIN(${least.join(",")}))`;
  return runs.length === 0 ? paid : `IF(AND(${runs.join(",")}),${paid},0)`;
}
