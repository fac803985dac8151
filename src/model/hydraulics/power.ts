import { gravity, waterDensity } from "./friction.js";

const wattsPerKilowatt = 1000;

/**
 * Power of a turbine, kW: η ρ g Q (H − h). In τ hours a layer that takes the head hf − hc costs the energy
 * E = η ρ g Q (hf − hc) τ.
 */
export function hydroPower(flow: number, netHead: number, efficiency: number): number {
  return (efficiency * waterDensity * gravity * flow * netHead) / wattsPerKilowatt;
}

/**
 * Electric power of a pump, kW: ρ g Q H / η, η of pump, motor and drive together. In τ hours a layer that adds the
 * head hf − hc takes the energy E = ρ g Q (hf − hc) τ/η.
 */
export function pumpPower(flow: number, head: number, efficiency: number): number {
  return (waterDensity * gravity * flow * head) / efficiency / wattsPerKilowatt;
}
