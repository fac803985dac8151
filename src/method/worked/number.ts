const printedDigits = 5;
const exactDigits = 4;
const roundingError = 1e-12;
/** Outside these sizes a number is written with a power of ten. */
const smallest = 1e-3;
const largest = 1e9;

/**
 * A number of a worked example: as it stands where four significant figures say all of it, else rounded to five.
 * A reader thus tells the rounded ones by their five figures: 1.5240 is rounded, 1.524 is exact.
 */
export function printed(value: number): string {
  const short = Number(value.toPrecision(exactDigits));
  const isExact = Math.abs(short - value) <= roundingError * Math.abs(value);
  const size = Math.abs(value);
  if (size > 0 && (size < smallest || size >= largest)) return scientific(value, isExact);
  return isExact ? grouped(String(short)) : grouped(fixed(value));
}

function fixed(value: number): string {
  const rounded = Number(value.toPrecision(printedDigits));
  const decimals = printedDigits - 1 - Math.floor(Math.log10(Math.abs(rounded)));
  return rounded.toFixed(Math.max(0, decimals));
}

function scientific(value: number, isExact: boolean): string {
  const text = isExact
    ? Number(value.toPrecision(exactDigits)).toExponential()
    : value.toExponential(printedDigits - 1);
  const [mantissa = "", power = ""] = text.split("e");
  return `${signed(mantissa)} × 10^${signed(power.replace("+", ""))}`;
}

/** Thousands set apart by commas from ten thousand up, and a true minus sign. */
function grouped(text: string): string {
  const [whole = "", decimals] = text.split(".");
  const digits = whole.replace("-", "");
  const apart = digits.length > exactDigits ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  return signed(decimals === undefined ? apart : `${apart}.${decimals}`);
}

const signed = (text: string) => text.replace("-", "−");
