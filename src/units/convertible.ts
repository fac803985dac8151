/** The converter counts the digits after the point, and makes no number of one with more of them than floating point holds. */
const nearestToZero = 1e-200;

/** A number as the unit converter can take it: zero for one so near to zero that the converter would fail. */
export const convertible = (number: number): number => (Math.abs(number) < nearestToZero ? 0 : number);
