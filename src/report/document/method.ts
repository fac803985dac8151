import { appendixLetter } from "../../study/format/report-schema.js";
import type { ReportContext } from "./context.js";

/** Outer bounds of the accuracy of a class 5 estimate [aace-18r-97, from a secondary text], as shares of it. */
export const accuracyRange = { low: -0.5, high: 1 } as const;

/** The method page and the cautions: words that are the same for every study. */
export const method = {
  steps: [
    "Levels. The points of a schedule are joined linearly into a daily elevation; of a record each year is one possible operating year, all equally likely, and costs are the mean over them. From the daily elevation come the days under water and the exposed periods at the elevation of each structure.",
    "Habitat. Each measured variable falls in a published class; the least suitable is the limiting factor. Its weight scales both settlement and the chance that arrivals found a population.",
    "Population. Lake-wide density rises by a logistic curve from its first share of capacity to its peak in the years that the species and lake type take (assumptions under “population”).",
    "Growth. On each surface monthly cohorts settle in the spawning season in proportion to density, depth, velocity and free space; shells lengthen with warmth (von Bertalanffy in degree-days); wet mass follows length (assumptions “shell.mass”); crowding limits how much of the surface is covered. Layer thickness is mass over bulk density, at least one shell where the layer is closed.",
    "Drying and frost. Exposure kills by its length, by air temperature, humidity and shell size: a log-logistic survival surface fitted to published points, and a published table of frost. Floating structures get no credit.",
    "Pipes. Darcy–Weisbach with Colebrook–White, or Hazen–Williams for a clean wall that the study knows by its C; the layer narrows the bore on both sides and its sand roughness is a multiple of the shell length that depends on how closed the layer is (assumptions under “hydraulics”).",
    "Racks. Head lost by the formula that the study names for a rack, Meusburger's where it names none; a layer on both sides of each gap thickens the bars and narrows the gaps.",
    "Pumps. A pump entered with a margin of head covers the clean loss at the largest demand and that margin beyond it; one entered with its curve runs where the curve meets the system’s, or at the speed that the demand needs.",
    "Power. Lost head reduces generation or adds pumping, at the month's price, by one efficiency or by that of the turbine's type at the flow while it runs, over the hours that it runs; a unit is derated in proportion to the cooling water, or where an exchanger is given the heat, that is missing; outages lose a stated share of the day's energy.",
    "Raw water. What dies on a line, and upstream of it, comes down in pieces: a strainer catches those wider than its mesh and is cleaned as it blinds, those longer than the bore of a tube or an orifice lodge in it. Coolers are cleaned as their tubes plug; what cannot be cleaned in time derates the unit and trips it (assumptions under “raw-water”).",
    "Upkeep. For each part, the plans of the catalogue that it can have (left as it is, cleaned at intervals, when near a limit or in the dry at low water, coated, dosed, strained, heated, given a second line) are followed from establishment on. The one of least present value over the horizon is taken, one for all options, unless the study prescribes one; as a layer nears a limit, cleanings that it forces come into the cost. Parts are judged one by one, each with the others clean.",
    "Arrival. The yearly chance of establishment rises with the fouled launches that slip through and with suitability; other pathways join it. Where a study states deterrence, the fouled launches that come are 1 − deterrence of those without checks, before any step of the program.",
    "Comparison. Expected cost of a year is the cost of each age of an infestation times the chance of that age: an exact sum, no sampling. Net benefit is damage avoided less added program cost, both present values. Where options say how they watch for mussels, only losses count until these are detected, in a sample or by the first harm; where none does, mussels are detected at once.",
    "A sum of engineering costs is partial: it leaves out how prices and people adjust, which tends to overstate losses to society as a whole.",
  ],
  accuracy:
    "AACE 18R-97 Class 5 (screening): typical accuracy −20 to −50% on the low side and +30 to +100% on the high side [aace-18r-97; outer bounds from a secondary text, inner ones from memory]. The comparison has no contingency; a request may add one.",
  standing:
    "A planning estimate for a budget decision, not engineering advice. Local codes and the judgment of licensed engineers take precedence; have an engineer check any structure before money is spent on it.",
} as const;

/** What no figure of this study counts. */
export function leftOut({ comparison, run }: ReportContext): string[] {
  const hasOther = comparison.baseline.presentValueByAccount.get("other")?.isZero() === false;
  const responds = run.document.options.some(({ response }) => response !== undefined);
  return [
    `recreation, property values, fishery and native species${hasOther ? ", beyond the losses that staff entered, which are in the second account" : ""}`,
    "harm to downstream waters and to other lakes that this one would infest",
    `attempts to contain or eradicate an infestation${responds ? ", beyond the response that an option states" : ""}`,
    `general inflation, which changes no answer (appendix ${appendixLetter("money")}), financing, taxes and insurance`,
  ];
}
