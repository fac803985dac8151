/** What a number says of the sign before its decimals: that it is a point, a comma, either, or nothing. */
type DecimalSign = "point" | "comma" | "either";

const withPoint = /^(?:[1-9]\d{0,2}(?:,\d{3})+|\d+)(?:\.\d+)?$/;
const withComma = /^(?:[1-9]\d{0,2}(?:\.\d{3})+|\d+)(?:,\d+)?$/;

/** Longer cells hold no number. */
const longestCell = 160;

/** The numbers of a cell, "1.240,5" of "1.240,5 m", and of a range all of them. */
export const numbersIn = (cell: string): readonly string[] =>
  cell.length > longestCell ? [] : (cell.match(/\d[\d.,]*\d/g) ?? []);

/** @returns undefined where it has no sign, or too many to be a number */
export function decimalSign(number: string): DecimalSign | undefined {
  if (!/[.,]/.test(number)) return undefined;
  const [point, comma] = [withPoint.test(number), withComma.test(number)];
  if (point && comma) return "either";
  if (point) return "point";
  return comma ? "comma" : undefined;
}

/** A cell whose numbers have decimal commas, with points instead and without marks between thousands. */
export const withPoints = (cell: string): string =>
  numbersIn(cell).length === 0
    ? cell
    : cell.replace(/\d[\d.,]*\d/g, (number) =>
        withComma.test(number) ? number.replaceAll(".", "").replace(",", ".") : number,
      );

/** The larger reading of a number that can be read in two ways: "12,000" as 12000. */
export const asThousands = (number: string): string => number.replace(/[.,]/g, "");

/** The smaller: "12,000" as 12.000. */
export const asDecimals = (number: string): string => number.replace(",", ".");
