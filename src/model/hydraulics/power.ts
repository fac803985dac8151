import { gravity, waterDensity } from "./friction.js";

const wattsPerKilowatt = 1000;

/** Power of a turbine, kW: η ρ g Q (H − h). */
export function hydroPower(flow: number, netHead: number, efficiency: number): number {
  return (efficiency * waterDensity * gravity * flow * netHead) / wattsPerKilowatt;
}

/** Electric power of a pump, kW: ρ g Q H / η, η of pump, motor and drive together. */
export function pumpPower(flow: number, head: number, efficiency: number): number {
  return (waterDensity * gravity * flow * head) / efficiency / wattsPerKilowatt;
}
