import { by, coded, gravityMeaning, type RelationGroup, type SymbolMeaning } from "./relation.js";

const hazenWords: readonly SymbolMeaning[] = [
  ["h", "friction loss", "m"],
  ["L", "length", "m"],
  ["Q", "flow", "m³/s"],
  ["C", "Hazen–Williams coefficient of the wall", ""],
  ["D", "bore", "m"],
];

export const pipeRelations: RelationGroup = {
  title: "Pipes",
  relations: [
    {
      title: "Roughness of a bed of shells",
      words:
        "Sand roughness over shell length by cover: the three lines are for a closed layer, for one half open, and for shells that stand alone. The source gives ranges; the straight lines between them are this project's.",
      formulas: [
        coded("c = N·L²"),
        coded("κ = κ1 where c ≥ c1"),
        coded("κ = κ2 − (κ2 − κ1)·|c − cm|/(cm − c0) where c0 < c < c1"),
        coded("κ = κ1 c/c0 where c ≤ c0"),
      ],
      where: [
        ["c", "cover", ""],
        ["N", "mussels on the wall", "1/m²"],
        ["L", "root mean square shell length", "m"],
        ["κ", "sand roughness over shell length", ""],
        ["κ_1", "the same of a closed layer", ""],
        ["κ_2", "its largest value", ""],
        ["c_1", "cover above which the layer is closed", ""],
        ["c_0", "cover below which shells stand alone", ""],
        ["c_m", "the middle between the two", ""],
      ],
      sources: ["wrr-2023"],
      computedBy: by("hydraulics/fouled-pipe.ts", "roughnessRatio"),
    },
    {
      title: "Fouled pipe",
      words: "The layer narrows the bore on both sides and roughens the wall, never below the clean pipe's.",
      formulas: [coded("Df = max(0, D − 2 t)"), coded("kf = max(k, κ L)")],
      where: [
        ["D_f", "bore between the layers", "m"],
        ["D", "clean bore", "m"],
        ["t", "thickness of the layer", "m"],
        ["k_f", "sand roughness, fouled", "m"],
        ["k", "sand roughness, clean", "m"],
        ["κ", "sand roughness over shell length", ""],
        ["L", "root mean square shell length", "m"],
      ],
      sources: ["wrr-2023", "trade-practice"],
      computedBy: by("hydraulics/fouled-pipe.ts", "fouledPipe"),
    },
    {
      title: "Head lost in a pipe",
      words: "Darcy–Weisbach friction and local losses on the velocity head.",
      formulas: [coded("h = (f L/D + ΣK) V²/2g")],
      where: [
        ["h", "head lost", "m"],
        ["f", "friction factor", ""],
        ["L", "length", "m"],
        ["D", "bore", "m"],
        ["ΣK", "sum of local loss coefficients", ""],
        ["V", "mean velocity", "m/s"],
        gravityMeaning,
      ],
      sources: ["darcy-weisbach"],
      computedBy: by("hydraulics/friction.ts", "pipeHeadLoss"),
    },
    {
      title: "Friction factor",
      words:
        "Laminar below a Reynolds number of 2000 (first line), Colebrook–White above 4000 (second), a straight line in the Reynolds number between (third). Colebrook–White was made for roughness up to a twentieth of the bore; beyond half the bore the program counts no more roughness.",
      formulas: [
        coded("64/Re", "f"),
        coded("1/√f = −2 log₁₀[(e/D)/3.7 + 2.51/(Re √f)]"),
        coded("f = f2 + (f4 − f2)·(Re − 2000)/(4000 − 2000)"),
        coded("Re = V D/ν"),
      ],
      where: [
        ["f", "Darcy friction factor", ""],
        ["f_2", "the same at a Reynolds number of 2000", ""],
        ["f_4", "at one of 4000", ""],
        ["Re", "Reynolds number", ""],
        ["e", "sand roughness of the wall", "m"],
        ["D", "bore", "m"],
        ["V", "mean velocity", "m/s"],
        ["ν", "kinematic viscosity of water", "m²/s"],
      ],
      sources: ["colebrook-1939"],
      computedBy: by("hydraulics/friction.ts", "frictionFactor"),
    },
    {
      title: "Flow that a head drives",
      words:
        "The same two relations solved together for the velocity, in turbulent flow; below it the laminar and the joining line are.",
      formulas: [
        coded("x = −2 log₁₀[(e/D)/3.7 + 2.51 ν s/(D √(2gh))]"),
        coded("s = √(L/D + ΣK x²)"),
        coded("V = x √(2gh)/s"),
      ],
      where: [
        ["V", "mean velocity", "m/s"],
        ["h", "head to spend", "m"],
        ["x", "inverse root of the friction factor", ""],
        ["s", "root of what the head has to overcome, with x", ""],
        ["e", "sand roughness of the wall", "m"],
        ["ν", "kinematic viscosity of water", "m²/s"],
        ["L", "length", "m"],
        ["D", "bore", "m"],
        ["ΣK", "sum of local loss coefficients", ""],
        gravityMeaning,
      ],
      sources: ["darcy-weisbach", "colebrook-1939"],
      computedBy: by("hydraulics/friction.ts", "flowAtHead"),
    },
    {
      title: "A clean wall known by its C",
      words:
        "Friction of a clean pipe that the study describes by its Hazen–Williams C; local losses are added. C is not constant on shells: once fouled, such a pipe loses by Darcy–Weisbach, and never less than clean.",
      formulas: [coded("h = 10.67 L Q^1.852 / (C^1.852 D^4.8704)")],
      where: hazenWords,
      sources: ["hazen-williams"],
      computedBy: by("hydraulics/hazen-williams.ts", "hazenWilliamsLoss"),
    },
    {
      title: "Roughness that stands for a C",
      words:
        "The sand roughness that loses the same friction head at the largest flow: a fouled wall is at least as rough.",
      formulas: [coded("e = 3.7 D (10^(−x/2) − 2.51 x/Re)")],
      where: [
        ["e", "equivalent sand roughness", "m"],
        ["D", "bore", "m"],
        ["x", "inverse root of the friction factor of that loss", ""],
        ["Re", "Reynolds number", ""],
      ],
      sources: ["colebrook-1939"],
      computedBy: by("hydraulics/hazen-williams.ts", "equivalentRoughness"),
    },
    {
      title: "The same loss as a C",
      words:
        "For readers who know a wall by its C: the one that would give the friction loss found. No cost rests on it.",
      formulas: [coded("C = (h1/h)^(1/1.852)")],
      where: [
        ["C", "Hazen–Williams coefficient", ""],
        ["h", "friction loss", "m"],
        ["h_1", "friction loss at a C of 1", "m"],
      ],
      sources: ["hazen-williams"],
      computedBy: by("hydraulics/hazen-williams.ts", "equivalentC"),
    },
  ],
};
