import { requireBetween } from "./allowed.js";

/**
 * Number below which a standard normal number lies with chance p: the inverse of Φ, to about 1 part in 10¹⁶.
 * Algorithm PPND16. Source: Wichura M.J. 1988. Algorithm AS 241: the percentage points of the normal distribution.
 * Applied Statistics 37(3):477-484.
 * @throws RangeError if p is not above 0 and below 1
 */
export function normalQuantile(p: number): number {
  requireBetween("chance", p, 0, 1);
  const offset = p - 1 / 2;
  if (Math.abs(offset) <= 0.425) return offset * ratio(central, 0.180625 - offset ** 2);
  const distance = Math.sqrt(-Math.log(offset < 0 ? p : 1 - p));
  const size = distance <= 5 ? ratio(middle, distance - 1.6) : ratio(far, distance - 5);
  return offset < 0 ? -size : size;
}

/** Coefficients of two polynomials, highest power first. */
interface Ratio {
  readonly upper: readonly number[];
  readonly lower: readonly number[];
}

const ratio = ({ upper, lower }: Ratio, x: number) => polynomial(upper, x) / polynomial(lower, x);

function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of coefficients) value = value * x + coefficient;
  return value;
}

/** a7 to a0 and b7 to 1 of the paper, each to the nearest double. */
const central: Ratio = {
  upper: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
    1971.5909503065513, 133.14166789178438, 3.3871328727963665,
  ],
  lower: [
    5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
    687.1870074920579, 42.31333070160091, 1,
  ],
};

/** c7 to c0 and d7 to 1. */
const middle: Ratio = {
  upper: [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
    5.769497221460691, 4.630337846156546, 1.4234371107496835,
  ],
  lower: [
    1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
    1.6763848301838038, 2.053191626637759, 1,
  ],
};

/** e7 to e0 and f7 to 1. */
const far: Ratio = {
  upper: [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
    0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  lower: [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
    0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
  ],
};
