import { pumpPower } from "../../model/hydraulics/power.js";
import { daysOf, hoursPerDay, secondsPerDay } from "../../model/lake/calendar.js";
import type { Intake } from "../../model/structures/inputs.js";
import type { Drive, Outcome } from "./intake-case.js";
import type { Sheet } from "./sheet.js";

interface MonthCase extends Drive {
  readonly outcome: Outcome;
  readonly month: number;
  readonly currency: string;
}

/** A smaller part of the heads whose difference it is has too few figures left to be reckoned from them as printed. */
const leastOfItsTerms = 1 / 100;

/** The energy that a pump uses on the head that the layer adds; nothing by gravity. */
export function energySteps(
  sheet: Sheet,
  { supply }: Intake,
  { outcome, cleanMonth, fouledMonth, month, currency }: MonthCase,
): void {
  if (supply.by !== "pump") return;
  const extra = Math.max(0, fouledMonth.head - cleanMonth.head);
  const power = pumpPower(fouledMonth.delivered, extra, supply.efficiency);
  const energy = power * daysOf(month) * hoursPerDay;
  const step = (name: string, symbol: string, is: string, value: number, unit: string) =>
    sheet.step({ name, symbol, is, value, unit });
  const taken = { name: "Extra head pumped", symbol: "Δh", value: extra, unit: "m" };
  sheet.step(extra < leastOfItsTerms * fouledMonth.head ? taken : { ...taken, is: outcome.extraHead });
  step("Extra power, mean of the month", "P", `ρ g ${outcome.delivered} Δh/(1000 η)`, power, "kW");
  step("Extra energy of the month", "E", "24 n P", energy, "kWh");
  step("Its cost", "C_E", "u E", energy * supply.energyPrice, currency);
}

/** Water from elsewhere for what the fouled conduit delivers less than the clean one. */
export function waterSteps(
  sheet: Sheet,
  { alternativeWater }: Intake,
  { outcome, cleanMonth, fouledMonth, month, currency }: MonthCase,
): void {
  const shortfall = Math.max(0, cleanMonth.delivered - fouledMonth.delivered);
  if (shortfall === 0) return;
  const volume = shortfall * daysOf(month) * secondsPerDay;
  const is = `86,400 n (${outcome.cleanDelivered} − ${outcome.delivered})`;
  sheet.step({ name: "Water that is missing", symbol: "W", is, value: volume, unit: "m³" });
  const cost = volume * alternativeWater;
  sheet.step({ name: "Its cost", symbol: "C_W", is: "w W", value: cost, unit: currency });
}
