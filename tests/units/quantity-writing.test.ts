import { describe, expect, it } from "vitest";
import { type DimensionName, dimensions } from "../../src/units/dimensions.js";
import { parseQuantity } from "../../src/units/quantity.js";
import {
  acre,
  acreFoot,
  btu,
  foot,
  gallon,
  inch,
  pound,
  relativeError,
  relativeTolerance,
  secondsPerDay,
  shortTon,
} from "./definitions.js";

type Writing = readonly [text: string | number, dimension: DimensionName, expected: number];

/** Each writing with its value in the coherent unit of its dimension, worked out from the definitions. */
const writings: readonly Writing[] = [
  ["1,240 ft", "elevation", 1240 * foot],
  ["378 m", "elevation", 378],
  ["-12 ft", "elevation", -12 * foot],
  ["8.63e-287 ft", "elevation", 0],
  ["1e-300 degF", "temperature", -32 / 1.8],
  ["42 in", "length", 42 * inch],
  ["7,200 ft", "length", 7200 * foot],
  ["1.2 m", "length", 1.2],
  ["0.375 in", "smallLength", 0.375 * inch],
  ["75 mm", "smallLength", 0.075],
  ["12,000 ft2", "area", 12_000 * foot ** 2],
  ["12,000 ft²", "area", 12_000 * foot ** 2],
  ["12,000 sq ft", "area", 12_000 * foot ** 2],
  ["12,000 sqft", "area", 12_000 * foot ** 2],
  ["1100 m²", "area", 1100],
  ["1,450 acre", "landArea", 1450 * acre],
  ["1,450 ac", "landArea", 1450 * acre],
  ["1,450 ac.", "landArea", 1450 * acre],
  ["60 ha", "landArea", 600_000],
  ["1,200 acre-ft", "volume", 1200 * acreFoot],
  ["1,200 acre ft", "volume", 1200 * acreFoot],
  ["1,200 acre-feet", "volume", 1200 * acreFoot],
  ["1,200 ac-ft", "volume", 1200 * acreFoot],
  ["1,200 ac ft", "volume", 1200 * acreFoot],
  ["1.5e6 m3", "volume", 1_500_000],
  ["3 ML", "volume", 3000],
  ["40 Mgal", "treatedVolume", 40e6 * gallon],
  ["450 cfs", "flow", 450 * foot ** 3],
  ["450 ft3/s", "flow", 450 * foot ** 3],
  ["500 gpm", "flow", (500 * gallon) / 60],
  ["2.5 MGD", "flow", (2.5e6 * gallon) / secondsPerDay],
  ["2.5 mgd", "flow", (2.5e6 * gallon) / secondsPerDay],
  ["8.5 m3/s", "flow", 8.5],
  ["8.5 m³/s", "flow", 8.5],
  ["2 ft/s", "speed", 2 * foot],
  ["0.6 m/s", "speed", 0.6],
  ["68 degF", "temperature", 20],
  ["68 °F", "temperature", 20],
  ["68°F", "temperature", 20],
  ["14 degF", "temperature", -10],
  ["20.5 °C", "temperature", 20.5],
  ["-3 degC", "temperature", -3],
  ["24 mg/L", "concentration", 24],
  ["24 mg/l", "concentration", 24],
  ["210 uS/cm", "conductivity", 210],
  ["210 µS/cm", "conductivity", 210],
  ["0.1 g/L", "salinity", 0.1],
  ["75 deg", "angle", 75],
  ["5 d", "duration", 5],
  ["12 h", "duration", 0.5],
  ["6 h", "hours", 6],
  ["6 min", "shortTime", 0.1],
  ["0.2 h", "shortTime", 0.2],
  ["8 yr", "years", 8],
  ["2 ton", "mass", 2 * shortTon],
  ["2 short ton", "mass", 2 * shortTon],
  ["1.8 tonne", "mass", 1800],
  ["6 lb/ft2", "areaMass", (6 * pound) / foot ** 2],
  ["30 kg/m²", "areaMass", 30],
  ["1,200 MWh", "energy", 1_200_000],
  ["1500 W/m2K", "heatTransfer", 1500],
  ["1500 W/m²K", "heatTransfer", 1500],
  ["1500 W/(m² K)", "heatTransfer", 1500],
  ["1500 W/(m²·K)", "heatTransfer", 1500],
  ["260 BTU/(h ft2 degF)", "heatTransfer", (260 * btu) / 3600 / foot ** 2 / (5 / 9)],
  ["260 Btu/(h ft² °F)", "heatTransfer", (260 * btu) / 3600 / foot ** 2 / (5 / 9)],
  ["80 kW/K", "capacityRate", 80],
  ["80 kW/degC", "capacityRate", 80],
  ["1,000 BTU/(h degF)", "capacityRate", btu / 3600 / (5 / 9)],
  ["35 %", "share", 0.35],
  ["35%", "share", 0.35],
  ["0.35", "share", 0.35],
  [0.35, "share", 0.35],
  ["0 %", "share", 0],
  ["100 %", "share", 1],
  ["2.5 %/yr", "yearlyShare", 0.025],
  ["2.5 % / yr", "yearlyShare", 0.025],
  ["-1 %/yr", "yearlyChange", -0.01],
  ["$17,000", "money", 17_000],
  ["€18,000", "money", 18_000],
  ["USD 1.5e6", "money", 1_500_000],
  ["$40,000/yr", "moneyPerYear", 40_000],
  ["€900 / yr", "moneyPerYear", 900],
  ["0.5 ft/d", "levelRate", 0.5 * foot],
  ["$24/h", "moneyPerHour", 24],
  ["EUR 30/h", "moneyPerHour", 30],
  ["$1,200/d", "moneyPerDay", 1200],
  ["$6/ft2", "moneyPerArea", 6 / foot ** 2],
  ["$60/m²", "moneyPerArea", 60],
  ["$57/ton", "moneyPerMass", 57 / shortTon],
  ["$57/short ton", "moneyPerMass", 57 / shortTon],
  ["$63/tonne", "moneyPerMass", 0.063],
  ["28 lb/ft3", "density", (28 * pound) / foot ** 3],
  ["28 lb/ft³", "density", (28 * pound) / foot ** 3],
  ["90 per ft2", "countPerArea", 90 / foot ** 2],
  ["1.1e-5 ft2/s", "viscosity", 1.1e-5 * foot ** 2],
  ["1.1e-5 ft²/s", "viscosity", 1.1e-5 * foot ** 2],
  ["0.002 ft2 h degF/BTU", "heatResistance", (0.002 * foot ** 2 * 3600) / 1.8 / btu],
  ["0.5 kPa", "pressure", 0.5],
  ["0.001 per degF day", "warmthRate", 0.0018],
  ["0.002 1/degC.d", "warmthRate", 0.002],
  ["62 BTU/(ft3 degF)", "volumetricHeat", ((62 * btu) / 3.6e6 / foot ** 3) * 1.8],
  ["1.163 kWh/m3.K", "volumetricHeat", 1.163],
  ["$20,000/cfs", "moneyPerFlow", 20_000 / foot ** 3],
  ["17,000 $", "money", 17_000],
  ["12 $/ft2", "moneyPerArea", 12 / foot ** 2],
  ["12 USD per sq. ft.", "moneyPerArea", 12 / foot ** 2],
  ["$12 per ton", "moneyPerMass", 12 / shortTon],
  ["$2/1,000 gal", "moneyPerVolume", 2 / (1000 * gallon)],
  ["$12/MG", "moneyPerTreatedVolume", 12 / (1e6 * gallon)],
  ["5 million gallons", "volume", 5e6 * gallon],
  ["2 ft per s", "speed", 2 * foot],
  ["42 in.", "smallLength", 42 * inch],
  ["12 sq. ft.", "area", 12 * foot ** 2],
  ["6 psf", "areaMass", (6 * pound) / foot ** 2],
  ["8 yrs", "years", 8],
  ["24 ppm", "concentration", 24],
  ["210 µmhos/cm", "conductivity", 210],
  ["35 percent", "share", 0.35],
  ["2.5 percent per year", "yearlyShare", 0.025],
  ["$180/acre-ft", "moneyPerVolume", 180 / acreFoot],
  ["€0.85/m3", "moneyPerVolume", 0.85],
  ["$12/Mgal", "moneyPerTreatedVolume", 12 / (1e6 * gallon)],
  ["$20/acre", "moneyPerLandArea", 20 / acre],
  ["$20/ac", "moneyPerLandArea", 20 / acre],
  ["€0.85/m³", "moneyPerVolume", 0.85],
  ["$0.08/kWh", "moneyPerEnergy", 0.08],
  ["$52/MWh", "moneyPerEnergy", 0.052],
  [12, "count", 12],
  ["1,200", "count", 1200],
];

describe("a quantity in the writing of the trade", () => {
  it.each(writings)("reads %s as %s", (text, dimension, expected) => {
    const { value } = parseQuantity(text, dimension);
    expect(relativeError(value, expected, dimension === "temperature" ? 1 : 0)).toBeLessThan(
      relativeTolerance,
    );
  });

  it("is tried for every dimension there is", () => {
    const tried = new Set(writings.map(([, dimension]) => dimension));
    expect(Object.keys(dimensions).filter((name) => !tried.has(name as DimensionName))).toEqual([]);
  });

  it.each(
    Object.entries(dimensions).flatMap(([name, { example }]) =>
      example.split(" or ").map((text) => [name as DimensionName, text.replaceAll('"', "")] as const),
    ),
  )("of %s is read as its own message proposes it: %s", (name, text) => {
    expect(parseQuantity(text, name).value).toBeGreaterThan(0);
  });

  it.each([
    ["  1,200 acre-ft ", "volume", "1,200 acre-ft"],
    ["$0.0820/kWh", "moneyPerEnergy", "$0.0820/kWh"],
    ["8.50 m³/s", "flow", "8.50 m³/s"],
    [0.35, "share", "0.35"],
  ] as const)("keeps the text of %j as typed", (text, dimension, kept) => {
    expect(parseQuantity(text, dimension)).toMatchObject({ text: kept, dimension });
  });
});

describe("a published conversion", () => {
  it("holds for 5.75 USD/acre-ft, 4.6616 USD/ML (Nelson 2019)", () => {
    expect(parseQuantity("$5.75/acre-ft", "moneyPerVolume").value * 1000).toBeCloseTo(4.6616, 4);
    expect(parseQuantity("$4.6616/ML", "moneyPerVolume").value * 1000).toBeCloseTo(4.6616, 10);
  });

  it("holds for 34.32 USD/Mgal, 9.0664 USD/ML (Chakraborti and others 2016)", () => {
    expect(parseQuantity("$34.32/Mgal", "moneyPerVolume").value * 1000).toBeCloseTo(9.0664, 4);
  });

  it("holds for 1 mgd, 0.0438126 m³/s (Chakraborti and others 2016 in SI units)", () => {
    expect(parseQuantity("1 mgd", "flow").value).toBeCloseTo(0.0438126, 7);
  });

  it("holds for 57.63 USD per short ton, 0.0635 USD/kg (tipping fee of 2023, EREF 2024)", () => {
    expect(parseQuantity("$57.63/short ton", "moneyPerMass").value).toBeCloseTo(0.0635, 4);
  });
});
