import type { RecordProblem } from "../reading/contradiction.js";
import { asDecimals, asThousands, decimalSign } from "../reading/csv-numbers.js";
import { describe } from "../reading/problems.js";
import type { Separator } from "./export-lines.js";
import type { ExportRow } from "./export-table.js";

export type Decimals = "point" | "comma";

export type DecimalsFound =
  | { readonly decimals: Decimals; readonly told?: string | undefined }
  | { readonly asked: RecordProblem };

interface Seen {
  readonly line: number;
  readonly number: string;
}

/** Longest number of an export. */
const longestNumber = 30;
const numberLike = /^[-+]?[\d.,]*\d[\d.,]*$/;

export const isNumberLike = (text: string): boolean => text.length <= longestNumber && numberLike.test(text);

/** What somebody typed for several: "Ice, Eqp". */
export const typedList = (text: string): string[] =>
  text
    .split(/[,;\n]/)
    .map((each) => each.trim())
    .filter((each) => each !== "");

/** "210.00" of "$210.00". */
export const withoutMoneySign = (text: string): string => text.replace(/^[$€£]\s*/, "");

/** The decimal sign of columns, as all their numbers show it; never guessed. */
export function decimalsOf(
  rows: readonly ExportRow[],
  columns: readonly number[],
  separator: Separator,
): DecimalsFound {
  const seen = new Map<string, Seen>();
  for (const { line, cells } of rows) {
    for (const column of columns) {
      const number = withoutMoneySign(cells[column] ?? "");
      if (!isNumberLike(number)) continue;
      const sign = decimalSign(number.replace(/^[-+]/, ""));
      if (sign && !seen.has(sign)) seen.set(sign, { line, number });
    }
  }
  const [point, comma, either] = [seen.get("point"), seen.get("comma"), seen.get("either")];
  if (point && comma) return { asked: bothSigns(point, comma) };
  if (comma)
    return { decimals: "comma", told: `Decimals have a comma, as ${comma.number} in line ${comma.line}.` };
  if (point || !either || (separator === "," && either.number.includes("."))) return { decimals: "point" };
  return { asked: openSign(either) };
}

const remedy = "Say whether decimals have a point or a comma.";

const bothSigns = (point: Seen, comma: Seen): RecordProblem => ({
  line: Math.max(point.line, comma.line),
  found: `${describe(point.number)} in line ${point.line} and ${describe(comma.number)} in line ${comma.line}`,
  allowed: "decimals with a point, or with a comma, throughout",
  remedy,
});

const openSign = ({ line, number }: Seen): RecordProblem => ({
  line,
  found: `${describe(number)}, which may be ${asDecimals(number)} or ${asThousands(number)}`,
  allowed: "numbers that can be read in only one way",
  remedy,
});

const patterns: Readonly<Record<Decimals, RegExp>> = {
  point: /^[-+]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?$|^[-+]?\.\d+$/,
  comma: /^[-+]?(?:\d{1,3}(?:\.\d{3})+|\d+)(?:,\d+)?$|^[-+]?,\d+$/,
};

/** A number with a decimal point and no other mark: "1240.50" for "1.240,50". @returns undefined if it is none */
export function plainNumber(text: string, decimals: Decimals): string | undefined {
  if (!isNumberLike(text) || !patterns[decimals].test(text)) return undefined;
  return decimals === "point" ? text.replaceAll(",", "") : text.replaceAll(".", "").replace(",", ".");
}
