import { by, coded, type Relation } from "./relation.js";

export const dryingRelations: readonly Relation[] = [
  {
    title: "Dryness of the air",
    words: "What the air could still take up: the vapour-pressure deficit.",
    formulas: [coded("δ = es (1 − H)")],
    where: [
      ["δ", "vapour-pressure deficit", "kPa"],
      ["e_s", "saturation vapour pressure", "kPa"],
      ["H", "relative humidity, 0 to 1", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("mussels/drying.ts", "vapourPressureDeficit"),
  },
  {
    title: "Saturation vapour pressure",
    words: "The Magnus form, over water.",
    formulas: [coded("es = 0.6112 exp(17.62 T/(243.12 + T))")],
    where: [
      ["e_s", "saturation vapour pressure", "kPa"],
      ["T", "air temperature", "°C"],
    ],
    sources: ["wmo-8"],
    computedBy: by("mussels/drying.ts", "saturationVapourPressure"),
  },
  {
    title: "Half-life in dry air",
    words:
      "Hours after which half the mussels of a length are dead: longer for large shells, shorter in dry and in warm air. The reference is one published condition.",
    formulas: [coded("h50 = h0 q (max(L, Lmin)/Lr)^x · (δr + β)/(δ + β Q^((T − Tr)/10))")],
    where: [
      ["h_50", "half-life", "h"],
      ["h_0", "half-life at the reference", "h"],
      ["q", "factor of the species", ""],
      ["L", "shell length", "mm"],
      ["L_min", "length below which shells dry no faster", "mm"],
      ["L_r", "reference length", "mm"],
      ["x", "exponent of length", ""],
      ["δ", "vapour-pressure deficit", "kPa"],
      ["δ_r", "the same at the reference", "kPa"],
      ["β", "death without water loss, as a deficit", "kPa"],
      ["Q", "its rise per 10 °C", ""],
      ["T", "air temperature", "°C"],
      ["T_r", "reference temperature", "°C"],
    ],
    sources: ["ricciardi-1995"],
    computedBy: by("mussels/drying.ts", "halfLifeHours"),
  },
  {
    title: "Hours of frost that kill",
    words:
      "Between rows of the published table linear in temperature on the logarithm of the hours; none above its mildest row, and the last hours below its hardest.",
    formulas: [coded("ln hk = ln h1 + (ln h2 − ln h1)·(T1 − T)/(T1 − T2)")],
    where: [
      ["h_k", "hours that kill a single mussel", "h"],
      ["T", "air temperature", "°C"],
      ["T_1", "milder row of the table", "°C"],
      ["T_2", "harder row", "°C"],
      ["h_1", "hours of the milder row", "h"],
      ["h_2", "hours of the harder row", "h"],
    ],
    sources: ["payne-1992"],
    computedBy: by("mussels/drying.ts", "frostKillHours"),
  },
  {
    title: "Survival of a dry run",
    words:
      "Doses add up over the hours of the run; survival falls log-logistically with each of them. A run kills month by month: of what is alive the survival at the month's end over that at its start lives on, by the lengths when the run began in the month, else by those of the month before. Of several runs in a month the one with the largest dose in it counts.",
    formulas: [coded("X = Σ h/h50"), coded("F = Σ h/(hk u)"), coded("S = 1/(1 + X^k) · 1/(1 + F^k (1−σ)/σ)")],
    where: [
      ["S", "share that outlives the run", ""],
      ["X", "dose of drying", ""],
      ["F", "dose of frost", ""],
      ["h", "hours at one month's air", "h"],
      ["h_50", "half-life in that air", "h"],
      ["h_k", "hours of frost that kill", "h"],
      ["u", "factor for clusters", ""],
      ["k", "steepness", ""],
      ["σ", "survival at the published killing time", ""],
    ],
    sources: ["ricciardi-1995", "payne-1992"],
    computedBy: by("mussels/drying.ts", "survival"),
  },
];
