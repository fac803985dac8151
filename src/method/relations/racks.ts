import { by, coded, gravityMeaning, type RelationGroup, type SymbolMeaning } from "./relation.js";

const rackWords: readonly SymbolMeaning[] = [
  ["h", "head lost", "m"],
  ["k_F", "factor of the bar's shape", ""],
  ["α", "angle of the rack from the horizontal", "°"],
  ["V", "approach velocity: flow over the rack's face", "m/s"],
  gravityMeaning,
];

export const rackRelations: RelationGroup = {
  title: "Racks",
  relations: [
    {
      title: "Blocked share of a rack",
      words: "Bars, and a layer on both sides of each gap, over the rack's face.",
      formulas: [coded("p = 1 − max(0, b − 2 t)/(s + b)")],
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
      title: "Steel of a rack",
      words:
        "The surface on which mussels settle: both sides, front and back of each bar, over the rack's face. Bracing and frame are left out.",
      formulas: [coded("2 (s + d)/(s + b)")],
      where: [
        ["s", "thickness of a bar", "m"],
        ["d", "depth of a bar along the flow", "m"],
        ["b", "clear spacing between bars", "m"],
      ],
      sources: ["trade-practice"],
      computedBy: by("hydraulics/rack.ts", "barSurfaceRatio"),
    },
    {
      title: "Rack loss by Meusburger",
      words:
        "Flow square to the rack. It has the blocked share in it; costs stand on it unless the study asks for another formula.",
      formulas: [coded("ξ = kF (p/(1−p))^1.5 sin α"), coded("h = ξ V²/2g")],
      where: [["ξ", "loss coefficient", ""], ["p", "blocked share of the rack's face", ""], ...rackWords],
      sources: ["meusburger-2002"],
      computedBy: by("hydraulics/rack.ts", "meusburgerLoss"),
    },
    {
      title: "Rack loss by Kirschmer",
      words: "Bars are thickened and gaps narrowed by the layer. Used where the study asks for it.",
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
      words: "The coefficient stands on the velocity through the net area. Used where the study asks for it.",
      formulas: [coded("K = 1.45 − 0.45 R − R²"), coded("h = K (V/R)²/2g")],
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
      title: "Rack loss by Clark",
      words:
        "Used where the study asks for it. Measured on clean bars, square to the flow: it tells too little under thick layers.",
      formulas: [coded("ξ = 7.43 η p²"), coded("h = ξ V²/2g")],
      where: [
        ["ξ", "loss coefficient", ""],
        ["h", "head lost", "m"],
        ["η", "factor of the bar's shape in this formula", ""],
        ["p", "blocked share of the rack's face", ""],
        ["V", "approach velocity", "m/s"],
        gravityMeaning,
      ],
      sources: ["clark-2010"],
      computedBy: by("hydraulics/rack.ts", "clarkLoss"),
    },
  ],
};
