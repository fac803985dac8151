/** What a number says of the sign before its decimals: that it is a point, a comma, either, or nothing. */
type DecimalSign = "point" | "comma" | "either";

const withPoint = /^(?:[1-9]\d{0,2}(?:,\d{3})+|\d+)(?:\.\d+)?$/;
const withComma = /^(?:[1-9]\d{0,2}(?:\.\d{3})+|\d+)(?:,\d+)?$/;

/** Longest cell that is searched for numbers. */
const longestCell = 160;

/** Numbers in a cell: "1.240,5" in "1.240,5 m"; all those of a range. */
export const numbersIn = (cell: string): readonly string[] =>
  cell.length > longestCell ? [] : (cell.match(/\d[\d.,]*\d/g) ?? []);

/** @returns undefined if it has no sign, or too many for a number */
export function decimalSign(number: string): DecimalSign | undefined {
  if (!/[.,]/.test(number)) return undefined;
  const [point, comma] = [withPoint.test(number), withComma.test(number)];
  if (point && comma) return "either";
  if (point) return "point";
  return comma ? "comma" : undefined;
}

/** A cell with decimal points for its decimal commas and no thousands separators. */
export const withPoints = (cell: string): string =>
  numbersIn(cell).length === 0
    ? cell
    : cell.replace(/\d[\d.,]*\d/g, (number) =>
        withComma.test(number) ? number.replaceAll(".", "").replace(",", ".") : number,
      );

/** The larger reading of an ambiguous number: "12,000" as 12000. */
export const asThousands = (number: string): string => number.replace(/[.,]/g, "");

/** The smaller: "12,000" as 12.000. */
export const asDecimals = (number: string): string => number.replace(",", ".");
