/**
 * What a quantity in a study may measure: the coherent unit that the model works in, the units in which it
 * is printed, and an example for messages. `unit` and the display units are written for js-quantities.
 * Money dimensions keep the currency of the study; only the unit under the stroke is converted.
 */
export interface Dimension {
  /** What a reader calls it: "a length". */
  readonly name: string;
  /** Coherent unit inside the model. */
  readonly unit: string;
  readonly us: DisplayUnit;
  readonly si: DisplayUnit;
  readonly example: string;
  /** Money per `unit`; the text starts with a currency sign or code. */
  readonly money?: boolean;
  /** What may stand under the stroke, where the unit converter would take more than is meant. */
  readonly underStroke?: RegExp;
  readonly minimum?: number;
  readonly maximum?: number;
}

interface DisplayUnit {
  /** For conversion. */
  readonly unit: string;
  /** For print. */
  readonly label: string;
}

const display = (unit: string, label = unit): DisplayUnit => ({ unit, label });

function money(name: string, unit: string, us: DisplayUnit, si: DisplayUnit, example: string): Dimension {
  return { name, unit, us, si, example, money: true, minimum: 0 };
}

const perYear = display("1/year", "yr");
const each = display("1", "each");

export const dimensions = {
  elevation: {
    name: "an elevation",
    unit: "m",
    us: display("ft"),
    si: display("m"),
    example: '"1,240 ft" or "378 m"',
  },
  length: {
    name: "a length",
    unit: "m",
    us: display("ft"),
    si: display("m"),
    example: '"42 in" or "1.2 m"',
    minimum: 0,
  },
  smallLength: {
    name: "a small length",
    unit: "m",
    us: display("in"),
    si: display("mm"),
    example: '"3 in" or "75 mm"',
    minimum: 0,
  },
  area: {
    name: "an area",
    unit: "m2",
    us: display("ft2", "ft²"),
    si: display("m2", "m²"),
    example: '"12,000 ft2" or "1100 m2"',
    minimum: 0,
  },
  landArea: {
    name: "an area",
    unit: "m2",
    us: display("acre", "acres"),
    si: display("hectare", "ha"),
    example: '"1,450 acre" or "60 ha"',
    minimum: 0,
  },
  volume: {
    name: "a volume",
    unit: "m3",
    us: display("acre*ft", "acre-ft"),
    si: display("m3", "m³"),
    example: '"1,200 acre-ft" or "1.5e6 m3"',
    minimum: 0,
  },
  treatedVolume: {
    name: "a volume of treated water",
    unit: "m3",
    us: display("Mgal"),
    si: display("ML"),
    example: '"40 Mgal" or "150 ML"',
    minimum: 0,
  },
  flow: {
    name: "a flow",
    unit: "m3/s",
    us: display("ft3/s", "cfs"),
    si: display("m3/s", "m³/s"),
    example: '"450 cfs" or "8.5 m3/s"',
    minimum: 0,
  },
  speed: {
    name: "a velocity",
    unit: "m/s",
    us: display("ft/s"),
    si: display("m/s"),
    example: '"2 ft/s" or "0.6 m/s"',
    minimum: 0,
  },
  levelRate: {
    name: "a rate of the level",
    unit: "m/day",
    us: display("ft/day", "ft/d"),
    si: display("m/day", "m/d"),
    example: '"0.5 ft/d" or "0.15 m/d"',
    minimum: 0,
  },
  temperature: {
    name: "a temperature",
    unit: "tempC",
    us: display("tempF", "°F"),
    si: display("tempC", "°C"),
    example: '"68 degF" or "20 degC"',
    minimum: -60,
    maximum: 60,
  },
  concentration: {
    name: "a concentration",
    unit: "mg/l",
    us: display("mg/l", "mg/L"),
    si: display("mg/l", "mg/L"),
    example: '"24 mg/L"',
    minimum: 0,
  },
  conductivity: {
    name: "a conductivity",
    unit: "uS/cm",
    us: display("uS/cm", "µS/cm"),
    si: display("uS/cm", "µS/cm"),
    example: '"210 uS/cm"',
    minimum: 0,
  },
  salinity: {
    name: "a salinity",
    unit: "g/l",
    us: display("g/l", "g/L"),
    si: display("g/l", "g/L"),
    example: '"0.1 g/L"',
    minimum: 0,
  },
  angle: {
    name: "an angle",
    unit: "deg",
    us: display("deg", "°"),
    si: display("deg", "°"),
    example: '"75 deg"',
    minimum: 0,
    maximum: 90,
  },
  duration: {
    name: "a duration",
    unit: "day",
    us: display("day", "d"),
    si: display("day", "d"),
    example: '"5 d" or "12 h"',
    minimum: 0,
  },
  hours: {
    name: "working time",
    unit: "hour",
    us: display("hour", "h"),
    si: display("hour", "h"),
    example: '"6 h"',
    minimum: 0,
  },
  shortTime: {
    name: "a short time",
    unit: "hour",
    us: display("minute", "min"),
    si: display("minute", "min"),
    example: '"6 min" or "0.2 h"',
    minimum: 0,
  },
  years: { name: "a number of years", unit: "year", us: perYear, si: perYear, example: '"8 yr"', minimum: 0 },
  mass: {
    name: "a mass",
    unit: "kg",
    us: display("ton", "short ton"),
    si: display("tonne", "t"),
    example: '"2 ton" or "1.8 tonne"',
    minimum: 0,
  },
  areaMass: {
    name: "a mass per area",
    unit: "kg/m2",
    us: display("lb/ft2", "lb/ft²"),
    si: display("kg/m2", "kg/m²"),
    example: '"6 lb/ft2" or "30 kg/m2"',
    minimum: 0,
  },
  energy: {
    name: "an energy",
    unit: "kWh",
    us: display("MWh"),
    si: display("MWh"),
    example: '"1,200 MWh"',
    minimum: 0,
  },
  heatTransfer: {
    name: "a heat transfer coefficient",
    unit: "W/m2*degK",
    us: display("BTU/h*ft2*degF", "BTU/(h ft² °F)"),
    si: display("W/m2*degK", "W/(m² K)"),
    example: '"1500 W/m2K" or "260 BTU/(h ft2 degF)"',
    minimum: 0,
  },
  capacityRate: {
    name: "a heat capacity rate",
    unit: "kW/degK",
    us: display("BTU/h*degF", "BTU/(h °F)"),
    si: display("kW/degK", "kW/K"),
    example: '"80 kW/K"',
    minimum: 0,
  },
  share: {
    name: "a share",
    unit: "1",
    us: display("%"),
    si: display("%"),
    example: '"35 %" or 0.35',
    minimum: 0,
    maximum: 1,
  },
  yearlyShare: {
    name: "a yearly rate",
    unit: "1",
    us: display("%", "%/yr"),
    si: display("%", "%/yr"),
    example: '"2.5 %/yr"',
    minimum: 0,
    maximum: 1,
  },
  yearlyChange: {
    name: "a yearly rise or fall",
    unit: "1",
    us: display("%", "%/yr"),
    si: display("%", "%/yr"),
    example: '"0.5 %/yr"',
  },
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
  count: { name: "a number", unit: "1", us: each, si: each, example: "12", minimum: 0 },
} as const satisfies Record<string, Dimension>;

export type DimensionName = keyof typeof dimensions;
