import { by, coded, type Relation, type RelationGroup, type SymbolMeaning } from "./relation.js";

const cover: readonly SymbolMeaning[] = [
  ["c", "cover of the wall before them", ""],
  ["c_1", "cover above which the layer is closed", ""],
];

const irrigation: readonly Relation[] = [
  {
    title: "Canal under a layer",
    words:
      "Flow of a lined canal over that of the same canal clean, at the same depth and slope, by Manning's formula: the layer takes of the section, and its shells roughen the lining.",
    formulas: [
      coded("Af = max(0, A − P t)"),
      coded("kf = max(k, κ L)"),
      coded("q = (Af/A)^(5/3) (k/kf)^(1/6)"),
    ],
    where: [
      ["q", "flow, fouled over clean", ""],
      ["A", "section of the water, clean", "m²"],
      ["A_f", "the same, fouled", "m²"],
      ["P", "wetted perimeter", "m"],
      ["t", "thickness of the layer", "m"],
      ["k", "sand roughness of the lining", "m"],
      ["k_f", "the same, fouled", "m"],
      ["κ", "sand roughness over shell length", ""],
      ["L", "root mean square shell length", "m"],
    ],
    sources: ["strickler-1923"],
    computedBy: by("hydraulics/canal.ts", "canalCapacityLeft"),
  },
  {
    title: "Water that a canal does not bring",
    words: "What it falls short of in a month, priced at the value of water not delivered.",
    formulas: [coded("W = max(0, Q − C q) s")],
    where: [
      ["W", "water not brought in the month", "m³"],
      ["Q", "mean flow of the month's delivery", "m³/s"],
      [
        "C",
        "flow of the clean canal; where it is not given, the largest delivery and something to spare",
        "m³/s",
      ],
      ["q", "flow, fouled over clean", ""],
      ["s", "seconds of the month", "s"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/deliveries/distribution.ts", "canalComponent"),
  },
  {
    title: "Water that laterals do not bring",
    words: "Laterals share each month's water equally; each is a line of small bore with its head.",
    formulas: [coded("W = (1 − S) V")],
    where: [
      ["W", "water not brought in the month", "m³"],
      ["S", "share of its need that a fouled lateral still brings", ""],
      ["V", "water of the month", "m³"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/deliveries/distribution.ts", "lateralsComponent"),
  },
  {
    title: "Plugged sprinklers",
    words:
      "Share of nozzles that shells plug in a month with water; each takes its time to clear. No count was found published.",
    formulas: [coded("p = p1 min(1, c/c1) min(1, L/b)")],
    where: [
      ["p", "share of nozzles", ""],
      ["p_1", "the same under a closed layer of shells as long as the bore is wide", ""],
      ...cover,
      ["L", "root mean square shell length", "m"],
      ["b", "bore of a nozzle", "m"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/deliveries/sprinklers.ts", "pluggedNozzles"),
  },
];

const hatcheries: readonly Relation[] = [
  {
    title: "Hatchery filters",
    words: "Hours a month of cleaning filters at the end of a line, for what breaks off in it.",
    formulas: [coded("H = N n h min(1, c/c1)")],
    where: [
      ["H", "hours in a month", "h"],
      ["N", "filters", ""],
      ["n", "more cleanings of each in a month, under a closed layer", ""],
      ["h", "hours of one cleaning", "h"],
      ...cover,
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/deliveries/hatchery.ts", "filterHours"),
  },
];

const treatment: readonly Relation[] = [
  {
    title: "Season of blue-green algae",
    words: "Share of a month, where the study enters no dose by month.",
    formulas: [coded("w = min(1, max(0, (T − T0)/(T1 − T0)))")],
    where: [
      ["w", "share of the typical dose", ""],
      ["T", "temperature of the lake's surface in the month", "°C"],
      ["T_0", "temperature up to which there is none", "°C"],
      ["T_1", "temperature from which it is the whole dose", "°C"],
    ],
    sources: ["highland-park"],
    computedBy: by("structures/deliveries/taste-and-odour.ts", "algaeSeason"),
  },
  {
    title: "Mussels, phosphorus and blue-green algae",
    words:
      "Mussels further them in lakes poor in phosphorus alone; where the study does not enter it, in full.",
    formulas: [coded("φ = min(1, max(0, (P0 − P)/(P0 − P1)))")],
    where: [
      ["φ", "share of the dose", ""],
      ["P", "total phosphorus in summer", "mg/L"],
      ["P_0", "total phosphorus from which there is no effect", "mg/L"],
      ["P_1", "total phosphorus up to which the effect is whole", "mg/L"],
    ],
    sources: ["sarnelle-2012"],
    computedBy: by("structures/deliveries/taste-and-odour.ts", "algaeFurthered"),
  },
  {
    title: "Extra treatment of drinking water",
    words:
      "Powdered carbon, and money spent against by-products, in a year: the amount by volume in a mature infestation on each month's water, in proportion to the lake's mussels. What clearer water saves is not credited.",
    formulas: [coded("m = Σ x d V")],
    where: [
      ["m", "carbon, or money, in a year", "kg"],
      ["x", "density over capacity in the month, times suitability", ""],
      ["d", "dose, or cost, by volume in a mature infestation", "kg/m³"],
      ["V", "water treated in the month", "m³"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/deliveries/taste-and-odour.ts", "amountByYear"),
  },
];

export const deliveryRelations: RelationGroup = {
  title: "Irrigation, hatcheries, treatment of water",
  relations: [...irrigation, ...hatcheries, ...treatment],
};
