import { type Dimension, display } from "./dimension.js";

/** What assumptions alone state: properties of water, layers and walls. */
export const materialDimensions = {
  density: {
    name: "a mass per volume",
    unit: "kg/m3",
    us: display("lb/ft3", "lb/ft³"),
    si: display("kg/m3", "kg/m³"),
    example: '"28 lb/ft3" or "450 kg/m3"',
    minimum: 0,
  },
  countPerArea: {
    name: "a number per area",
    unit: "1/m2",
    us: display("1/ft2", "per ft²"),
    si: display("1/m2", "per m²"),
    example: '"90 per ft2" or "1000 per m2"',
    minimum: 0,
  },
  viscosity: {
    name: "a kinematic viscosity",
    unit: "m2/s",
    us: display("ft2/s", "ft²/s"),
    si: display("m2/s", "m²/s"),
    example: '"1.1e-5 ft2/s" or "1e-6 m2/s"',
    minimum: 0,
  },
  heatResistance: {
    name: "a resistance to heat",
    unit: "m2*degK/W",
    us: display("ft2*h*degF/BTU", "ft² h °F/BTU"),
    si: display("m2*degK/W", "m² K/W"),
    example: '"0.002 ft2 h degF/BTU" or "0.00035 m2K/W"',
    minimum: 0,
  },
  pressure: {
    name: "a pressure",
    unit: "kPa",
    us: display("psi"),
    si: display("kPa"),
    example: '"0.07 psi" or "0.5 kPa"',
    minimum: 0,
  },
  warmthRate: {
    name: "a rate by warmth and day",
    unit: "1/degC*day",
    us: display("1/degF*day", "per °F day"),
    si: display("1/degC*day", "per °C day"),
    example: '"0.001 per degF day" or "0.002 per degC day"',
    minimum: 0,
  },
  volumetricHeat: {
    name: "a heat by volume and degree",
    unit: "kWh/m3*degK",
    us: display("BTU/ft3*degF", "BTU/(ft³ °F)"),
    si: display("kWh/m3*degK", "kWh/(m³ K)"),
    example: '"62 BTU/(ft3 degF)" or "1.16 kWh/m3K"',
    minimum: 0,
  },
} as const satisfies Record<string, Dimension>;
