import type { RegisteredId } from "../register/register.js";

/** Ids of what an amount of money cannot exceed, by what it is paid for. */
export const largestAmounts = {
  amount: "checks.impossible-amount",
  perDay: "checks.impossible-daily-amount",
  perHour: "checks.impossible-hourly-amount",
  perVolume: "checks.impossible-water-price",
  perEnergy: "checks.impossible-energy-price",
  perMass: "checks.impossible-mass-price",
} as const satisfies Record<string, RegisteredId>;
