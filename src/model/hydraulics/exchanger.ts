import type { Exchanger } from "../structures/inputs.js";
import { waterDensity } from "./friction.js";

/** Specific heat of water between 10 and 30 °C, J/(kg K). */
const specificHeat = 4186;
const wattsPerKilowatt = 1000;

/** Coefficient of a fouled wall, W/(m² K): 1/U = 1/Uc + R, R in m² K/W on the same area. */
export function fouledCoefficient(cleanCoefficient: number, resistance: number): number {
  return 1 / (1 / cleanCoefficient + resistance);
}

/**
 * Effectiveness of a counterflow exchanger (textbook form, from memory):
 * ε = (1 − exp(−NTU (1−C)))/(1 − C exp(−NTU (1−C))), and NTU/(1 + NTU) at C = 1.
 * @param transferUnits NTU = U A/Cmin
 * @param capacityRatio C = Cmin/Cmax, 0 to 1
 */
export function counterflowEffectiveness(transferUnits: number, capacityRatio: number): number {
  const spare = 1 - capacityRatio;
  if (spare === 0) return transferUnits / (1 + transferUnits);
  const reached = -Math.expm1(-transferUnits * spare);
  return reached / (spare + capacityRatio * reached);
}

/**
 * Heat carried off per kelvin between the two inlets, kW/K: q = ε Cmin. Nothing without cooling water.
 * @param coolingFlow m³/s
 * @param coefficient U as it stands, W/(m² K)
 */
export function exchangerDuty(
  { area, hotCapacityRate }: Exchanger,
  coolingFlow: number,
  coefficient: number,
): number {
  if (coolingFlow <= 0) return 0;
  const coldCapacityRate = (coolingFlow * waterDensity * specificHeat) / wattsPerKilowatt;
  const smaller = Math.min(coldCapacityRate, hotCapacityRate);
  const larger = Math.max(coldCapacityRate, hotCapacityRate);
  const transferUnits = (coefficient * area) / wattsPerKilowatt / smaller;
  return smaller * counterflowEffectiveness(transferUnits, smaller / larger);
}
