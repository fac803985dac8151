import { type Dimension, type DisplayUnit, display } from "./dimension.js";

function money(name: string, unit: string, us: DisplayUnit, si: DisplayUnit, example: string): Dimension {
  return { name, unit, us, si, example, money: true, minimum: 0 };
}

const perYear = display("1/year", "yr");
const each = display("1", "each");

/** Amounts of money, and prices of what stands under the stroke. */
export const moneyDimensions = {
  money: money("an amount of money", "1", each, each, '"$17,000"'),
  moneyPerYear: {
    ...money("money per year", "1", perYear, perYear, '"$40,000/yr"'),
    underStroke: /^(yr|year|a)$/,
  },
  moneyPerHour: {
    ...money("money per hour", "hour", display("hour", "h"), display("hour", "h"), '"$24/h"'),
    underStroke: /^(h|hr|hour)$/,
  },
  moneyPerDay: {
    ...money("money per day", "day", display("day", "d"), display("day", "d"), '"$1,200/d"'),
    underStroke: /^(d|day)$/,
  },
  moneyPerArea: money(
    "money per area",
    "m2",
    display("ft2", "ft²"),
    display("m2", "m²"),
    '"$6/ft2" or "$60/m2"',
  ),
  moneyPerLandArea: money(
    "money per area of land",
    "m2",
    display("acre"),
    display("hectare", "ha"),
    '"$20/acre" or "$50/ha"',
  ),
  moneyPerMass: money(
    "money per mass",
    "kg",
    display("ton", "short ton"),
    display("tonne", "t"),
    '"$57/ton" or "$63/tonne"',
  ),
  moneyPerVolume: money(
    "money per volume",
    "m3",
    display("acre*ft", "acre-ft"),
    display("m3", "m³"),
    '"$180/acre-ft" or "$0.15/m3"',
  ),
  moneyPerTreatedVolume: money(
    "money per volume of treated water",
    "m3",
    display("Mgal"),
    display("ML"),
    '"$12/Mgal" or "$3/ML"',
  ),
  moneyPerEnergy: money(
    "money per energy",
    "kWh",
    display("MWh"),
    display("MWh"),
    '"$0.08/kWh" or "$52/MWh"',
  ),
  moneyPerFlow: money(
    "money per flow",
    "m3/s",
    display("ft3/s", "cfs"),
    display("m3/s", "(m³/s)"),
    '"$20,000/cfs" or "$700,000/(m3/s)"',
  ),
} as const satisfies Record<string, Dimension>;
