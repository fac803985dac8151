import type { ReportContext } from "./context.js";

/** At which boats are washed, in degrees Celsius: common practice. */
const washTemperature = 60;

const structures = [
  "Diving near intakes and gates: differential head and moving water can kill. Lock out pumps, gates and units; plan the dive under the local diving code.",
  "Conduits, penstocks and wells are confined spaces: test the air, ventilate, keep an attendant and a rescue plan; isolate stored energy and water.",
  "Dead shells are razor-sharp and rot: gloves, boots, closed footwear on ramps; hydrogen sulphide and lack of oxygen are possible where they decay.",
  "Oxidants and other treatments are pesticides in law: a permit, a licensed applicator, residual limits at the outfall and drinking-water rules apply. Chlorine gas and hypochlorite are hazardous to store and handle.",
  "Old coatings may hold lead: have them tested before scraping, blasting or welding; contain the dust and follow the rules for work with lead.",
  "Rapid drawdown can make banks and embankment dams slide and strand fish: keep to the rate that the dam's safety engineer allows.",
  "Cold water kills within minutes: life jackets on docks, ramps and boats, no work beside water alone, a means of rescue at hand.",
];

/** Of stations at which boats are checked and washed. */
const stations = (hotWater: string) => [
  "Authority to stop, hold and search boats comes from law: settle with counsel who may do what before the first boat is stopped; staff without it ask for consent, let go and report.",
  "Roadside and lone work: traffic control by a licensed plan, high-visibility clothing, two people or a check-in by radio, never pursue anyone who drives on.",
  `Hot-wash water scalds at ${hotWater}: shields, training, never spray people or animals. Engines are flushed as their makers direct, with the propeller clear and nobody near it; exhaust needs open air.`,
  "Electricity at washing units: circuits protected against ground faults, cables off wet ground, no generator in a closed space.",
  "Wash water carries mussels, oil and paint: catch it away from the lake, and dispose of it as the discharge permit allows.",
];

/** Where work can hurt someone; those of stations where the lake may have any. */
export function safetyCautions({ format, infestedSince }: ReportContext): string[] {
  const hotWater = format.quantity(washTemperature, "temperature");
  return infestedSince === undefined ? [...stations(hotWater), ...structures] : structures;
}
