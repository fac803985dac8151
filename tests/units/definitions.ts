/**
 * Exact definitions of the units (NIST Special Publication 811 and NIST Handbook 44, from memory). An acre is
 * 43,560 square feet of the international foot.
 */
export const foot = 0.3048;
export const inch = 0.0254;
export const acre = 43_560 * foot ** 2;
export const acreFoot = acre * foot;
export const gallon = 3.785411784e-3;
export const pound = 0.45359237;
export const shortTon = 2000 * pound;
/** J, to the seven digits that Special Publication 811 prints. */
export const btu = 1055.056;
export const secondsPerDay = 86_400;

/** The converter behind the project rounds the gallon to eight figures, hence not closer than this. */
export const relativeTolerance = 1e-8;

/** Distance of two values over the size of the expected one; over 1 for small temperatures. */
export function relativeError(actual: number, expected: number, floor = 0): number {
  const scale = Math.max(Math.abs(expected), floor);
  return scale === 0 ? Math.abs(actual) : Math.abs(actual - expected) / scale;
}
