import { by, coded, type Relation, type RelationGroup, type SymbolMeaning } from "./relation.js";

const pieceWords: readonly SymbolMeaning[] = [
  ["G", "mass of pieces a month", "kg"],
  ["P", "share of it in pieces longer than an opening", ""],
  ["a", "opening of the mesh", "m"],
  ["ω", "width of a piece over its length", ""],
];

const pieces: readonly Relation[] = [
  {
    title: "Pieces that break off",
    words:
      "Of what dies on a wall or is crowded off it in a month, a share comes down the line. Druses are as large as the layer is thick, and no smaller than one shell.",
    formulas: [coded("G = χ Ms A"), coded("s = max(L, t)")],
    where: [
      ["G", "mass of pieces a month", "kg"],
      ["χ", "share that comes off in pieces", ""],
      ["M_s", "mass that dies or loses its hold", "kg/m²"],
      ["A", "wall", "m²"],
      ["s", "size of the pieces", "m"],
      ["L", "shell length", "m"],
      ["t", "thickness of the layer", "m"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/pieces.ts", "shedPieces"),
  },
  {
    title: "Pieces from upstream",
    words:
      "A line draws pieces from the walls that it is tapped from, by its share of their water; of a plant, from its rack and penstock. They are as if left alone, but no thicker than their own upkeep lets them grow. Behind a fine strainer with ultraviolet light there are none.",
    formulas: [coded("G = Gu Q/Qu")],
    where: [
      ["G", "mass of pieces drawn a month", "kg"],
      ["G_u", "mass of pieces that the walls shed", "kg"],
      ["Q", "flow of the line", "m³/s"],
      ["Q_u", "flow along the walls", "m³/s"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/upstream.ts", "upstreamPieces"),
  },
  {
    title: "Pieces longer than an opening",
    words: "The law of broken material of Rosin and Rammler.",
    formulas: [coded("P = exp(−(d/s)^k)")],
    where: [
      ["P", "share of the mass", ""],
      ["d", "length of the opening", "m"],
      ["s", "size of the pieces", "m"],
      ["k", "exponent", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/pieces.ts", "longerShare"),
  },
  {
    title: "What a strainer catches",
    words: "Pieces pass a mesh end on, by their width.",
    formulas: [coded("C = G P(a/ω)")],
    where: [["C", "mass caught a month", "kg"], ...pieceWords],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/pieces.ts", "caughtMass"),
  },
  {
    title: "Pieces that lodge in tubes and orifices",
    words:
      "Those that pass the mesh end on and are longer than the bore is wide lie across it. None where the mesh holds all of them.",
    formulas: [coded("N = G (P(b) − P(a/ω))/W(ℓ)"), coded("ℓ = min(max(b, s), a/ω)")],
    where: [
      ["N", "pieces a month", ""],
      ...pieceWords,
      ["b", "bore", "m"],
      ["W", "mass of a mussel of a length", "kg"],
      ["ℓ", "length of the pieces that lodge", "m"],
      ["s", "size of the pieces", "m"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/pieces.ts", "lodgingPieces"),
  },
];

const effects: readonly Relation[] = [
  {
    title: "Cleanings of a strainer",
    words:
      "Each time that what is caught covers a share of its screen. A duplex strainer is cleaned while its other basket works, a simplex one with the line shut, a self-cleaning one costs nothing.",
    formulas: [coded("nS = C/(ρb s AS β)")],
    where: [
      ["n_S", "cleanings a month", ""],
      ["C", "mass caught", "kg"],
      ["ρ_b", "bulk density", "kg/m³"],
      ["s", "size of the pieces", "m"],
      ["A_S", "screen", "m²"],
      ["β", "share covered when it is cleaned", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/loading.ts", "blindings"),
  },
  {
    title: "Cleanings of a cooler",
    words:
      "Coolers side by side share the pieces by the area of their first passes. Each is cleaned when its spare tubes are plugged, as often as can be; what plugs beyond that stays plugged.",
    formulas: [coded("n = min(x/σ, nm)"), coded("xp = max(min(σ, x), x/nm)")],
    where: [
      ["n", "cleanings a month", ""],
      ["x", "share of the first pass plugged in a month", ""],
      ["σ", "share of tubes that may be plugged", ""],
      ["n_m", "most cleanings a month", ""],
      ["x_p", "share plugged when it is cleaned, at most all", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/loading.ts", "coolerCleanings"),
  },
  {
    title: "What plugged coolers leave",
    words:
      "Water in proportion to the open tubes of the first passes, area to the open tubes of all passes. With these the service of the line is worked out as above.",
    formulas: [coded("w = Σ φ (1 − x)"), coded("a = Σ n (1 − x/p)/Σ n")],
    where: [
      ["w", "share of the water left", ""],
      ["a", "share of the area left", ""],
      ["φ", "share of the water through coolers alike", ""],
      ["x", "share of their first pass plugged", ""],
      ["n", "their tubes", ""],
      ["p", "their passes", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/loading.ts", "leftOf"),
  },
  {
    title: "Service that plugged coolers miss",
    words:
      "Beyond what the spare tubes make up for, half of the worst in the mean. Above the limit of derating a unit trips and stands until its coolers are clean. It also stands, by its price, for the hours in which coolers, a simplex strainer or an orifice are open.",
    formulas: [coded("τ = max(0, 1 − D0/D)"), coded("V = τ + (1 − τ) min(D, D0)/2")],
    where: [
      ["V", "share of the service missing", ""],
      ["τ", "share of the time tripped", ""],
      ["D", "share missing at the worst, over the service with the spare tubes plugged", ""],
      ["D_0", "its limit", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/raw-water/raw-water.ts", "missingShare"),
  },
];

export const rawWaterRelations: RelationGroup = {
  title: "Raw-water systems: strainers, coolers, orifices",
  relations: [...pieces, ...effects],
};
