import { betaQuantile } from "../risk/beta.js";
import { requireBetween, requireCount } from "./allowed.js";

/**
 * The value that Student's t does not exceed with a chance: t = √(ν x/(1−x)), where x, the share |2p−1| of a beta
 * distribution with shapes 1/2 and ν/2, is that of t² in ν + t².
 * @throws RangeError for a chance that is not between 0 and 1, or degrees of freedom that are not whole from 1
 */
export function studentQuantile(chance: number, degreesOfFreedom: number): number {
  requireBetween("chance", chance, 0, 1);
  requireCount("degrees of freedom", degreesOfFreedom, 1);
  const x = betaQuantile(Math.abs(2 * chance - 1), 1 / 2, degreesOfFreedom / 2);
  return Math.sign(chance - 1 / 2) * Math.sqrt((degreesOfFreedom * x) / (1 - x));
}
