import { by, coded, derived, gravityMeaning, type RelationGroup, type SymbolMeaning } from "./relation.js";

const rackWords: readonly SymbolMeaning[] = [
  ["h", "head lost", "m"],
  ["k_F", "factor of the bar's shape", ""],
  ["α", "angle of the rack from the horizontal", "°"],
  ["V", "approach velocity: flow over the rack's face", "m/s"],
  gravityMeaning,
];

const powerWords: readonly SymbolMeaning[] = [
  ["P", "power", "W"],
  ["η", "efficiency", ""],
  ["ρ", "density of water, 1000", "kg/m³"],
  gravityMeaning,
  ["Q", "flow", "m³/s"],
];

export const rackAndPowerRelations: RelationGroup = {
  title: "Racks, pumps and turbines",
  relations: [
    {
      title: "Blocked share of a rack",
      words: "Bars, and a layer on both sides of each gap, over the rack's face.",
      formulas: [derived("p = 1 − (b − 2 t)/(s + b)")],
      where: [
        ["p", "blocked share", ""],
        ["b", "clear spacing between bars", "m"],
        ["s", "thickness of a bar", "m"],
        ["t", "thickness of the layer", "m"],
      ],
      sources: ["meusburger-2002"],
      computedBy: by("hydraulics/rack.ts", "blockedShare"),
    },
    {
      title: "Rack loss by Meusburger",
      words: "Flow square to the rack. It has the blocked share in it, and the costs stand on it.",
      formulas: [coded("ξ = kF (p/(1−p))^1.5 sin α"), derived("h = ξ V²/2g")],
      where: [["ξ", "loss coefficient", ""], ["p", "blocked share of the rack's face", ""], ...rackWords],
      sources: ["meusburger-2002"],
      computedBy: by("hydraulics/rack.ts", "meusburgerLoss"),
    },
    {
      title: "Rack loss by Kirschmer",
      words: "Printed beside the first, with bars thickened and gaps narrowed by the layer.",
      formulas: [coded("h = kF (s/b)^(4/3) sin α V²/2g")],
      where: [
        ...rackWords,
        ["s", "thickness of a bar with its layer", "m"],
        ["b", "clear spacing left between them", "m"],
      ],
      sources: ["kirschmer-1926"],
      computedBy: by("hydraulics/rack.ts", "kirschmerLoss"),
    },
    {
      title: "Rack loss by the Bureau of Reclamation",
      words: "Printed beside the first. The coefficient stands on the velocity through the net area.",
      formulas: [coded("K = 1.45 − 0.45 R − R²"), derived("h = K (V/R)²/2g")],
      where: [
        ["h", "head lost", "m"],
        ["K", "loss coefficient", ""],
        ["R", "net over gross area", ""],
        ["V", "approach velocity", "m/s"],
        gravityMeaning,
      ],
      sources: ["reclamation-small-dams"],
      computedBy: by("hydraulics/rack.ts", "reclamationLoss"),
    },
    {
      title: "Pumping",
      words: "Power of a pump at its flow and head; the energy of a month for the head that the layer adds.",
      formulas: [coded("ρ g Q H / η", "P"), derived("E = ρ g Q (hf − hc) τ/η")],
      where: [
        ...powerWords,
        ["H", "head", "m"],
        ["E", "energy added", "W·h"],
        ["h_f", "head lost, fouled", "m"],
        ["h_c", "head lost, clean", "m"],
        ["τ", "hours in the month", "h"],
      ],
      sources: ["trade-practice"],
      computedBy: by("hydraulics/power.ts", "pumpPower"),
    },
    {
      title: "Turbine power and energy lost",
      words:
        "Power at the net head; the energy of a month that is not made for the head that the layer takes, at the month's price.",
      formulas: [coded("η ρ g Q (H − h)", "P"), derived("E = η ρ g Q (hf − hc) τ")],
      where: [
        ...powerWords,
        ["H", "lake level less tailwater", "m"],
        ["h", "head lost on the way", "m"],
        ["E", "energy not made", "W·h"],
        ["h_f", "head lost, fouled", "m"],
        ["h_c", "head lost, clean", "m"],
        ["τ", "hours in the month", "h"],
      ],
      sources: ["trade-practice"],
      computedBy: by("hydraulics/power.ts", "hydroPower"),
    },
  ],
};
