import { by, coded, derived, gravityMeaning, type RelationGroup } from "./relation.js";

export const pipeRelations: RelationGroup = {
  title: "Pipes",
  relations: [
    {
      title: "Roughness of a bed of shells",
      words:
        "Sand roughness over shell length by cover: the three lines are for a closed layer, for one half open, and for shells that stand alone. The source gives ranges; the straight lines between them are this project's.",
      formulas: [
        coded("N·L²", "c"),
        derived("κ = κ1 where c ≥ c1"),
        derived("κ = κ2 − (κ2 − κ1)·|c − cm|/(cm − c0) where c0 < c < c1"),
        derived("κ = κ1 c/c0 where c ≤ c0"),
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
      formulas: [derived("Df = D − 2 t"), derived("kf = max(k, κ L)")],
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
        "Laminar below a Reynolds number of 2000 (first line), Colebrook–White above 4000 (second), a straight line in the Reynolds number between.",
      formulas: [
        coded("64/Re", "f"),
        coded("1/√f = −2 log₁₀[(e/D)/3.7 + 2.51/(Re √f)]"),
        derived("Re = V D/ν"),
      ],
      where: [
        ["f", "Darcy friction factor", ""],
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
      words: "The same two relations solved together for the velocity.",
      formulas: [coded("V = √(2gh/(f L/D + ΣK))")],
      where: [
        ["V", "mean velocity", "m/s"],
        ["h", "head to spend", "m"],
        ["f", "friction factor", ""],
        ["L", "length", "m"],
        ["D", "bore", "m"],
        ["ΣK", "sum of local loss coefficients", ""],
        gravityMeaning,
      ],
      sources: ["darcy-weisbach", "colebrook-1939"],
      computedBy: by("hydraulics/friction.ts", "flowAtHead"),
    },
    {
      title: "The same loss as a Hazen–Williams C",
      words:
        "For readers who know a wall by its C: the C that would give the friction loss found above. It is not constant on a wall of shells and no cost rests on it.",
      formulas: [coded("h = 10.67 L Q^1.852 / (C^1.852 D^4.8704)")],
      where: [
        ["C", "Hazen–Williams coefficient", ""],
        ["h", "friction loss", "m"],
        ["L", "length", "m"],
        ["Q", "flow", "m³/s"],
        ["D", "bore", "m"],
      ],
      sources: ["hazen-williams"],
      computedBy: by("hydraulics/friction.ts", "hazenWilliamsLoss"),
    },
  ],
};
