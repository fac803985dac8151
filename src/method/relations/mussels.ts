import { dryingRelations } from "./drying.js";
import { monthRelations } from "./month.js";
import { by, coded, type Relation, type RelationGroup } from "./relation.js";

const growthRelations: readonly Relation[] = [
  {
    title: "Pace of the population",
    words:
      "The rate of the logistic curve that leads from the first share of capacity to the peak in the years that species and lake type take.",
    formulas: [coded("r = [ln((1−s)/s) + ln(p/(1−p))]/T")],
    where: [
      ["r", "rate", "1/yr"],
      ["s", "share of capacity at establishment", ""],
      ["p", "share of capacity that counts as the peak", ""],
      ["T", "years to the peak", "yr"],
    ],
    sources: ["karatayev-2011-2015", "project-judgement"],
    computedBy: by("mussels/population.ts", "logisticRate"),
  },
  {
    title: "Density of the lake",
    words:
      "Logistic in the years since establishment, taken in the middle of each month. After the peak it is multiplied by the second line. Within a ten-thousandth of what it settles to, it counts as settled.",
    formulas: [coded("n = 1/(1 + exp(−r t)·(1−s)/s)"), coded("1 − (1−q)·min(1, (t − T)/y)", "decline")],
    where: [
      ["n", "density over capacity, 0 to 1", ""],
      ["t", "years since establishment", "yr"],
      ["r", "rate", "1/yr"],
      ["s", "share of capacity at establishment", ""],
      ["T", "years to the peak", "yr"],
      ["q", "later density over that at the peak", ""],
      ["y", "years over which it declines", "yr"],
    ],
    sources: ["trade-practice", "hetherington-2019"],
    computedBy: by("mussels/population.ts", "densityShare"),
  },
  {
    title: "Shell length",
    words: "Growth by von Bertalanffy, with warmth in place of time: a shell stands still in the cold.",
    formulas: [coded("L = Lmax − (Lmax − L0)·exp(−k·DD)")],
    where: [
      ["L", "length after the month", "mm"],
      ["L_0", "length before it", "mm"],
      ["L_max", "largest length", "mm"],
      ["k", "growth rate", "1/(°C·d)"],
      ["DD", "degree-days of the month", "°C·d"],
    ],
    sources: ["bertalanffy-1938", "karatayev-2006"],
    computedBy: by("mussels/shell.ts", "grownLengthMm"),
  },
  {
    title: "Mass of a mussel",
    words: "A straight line between the natural logarithms of length and live wet mass.",
    formulas: [coded("ln W = a + b ln L")],
    where: [
      ["W", "live wet mass of one mussel", "g"],
      ["L", "shell length", "mm"],
      ["a", "intercept", ""],
      ["b", "slope", ""],
    ],
    sources: ["kehne-2022"],
    computedBy: by("mussels/shell.ts", "wetMassG"),
  },
  {
    title: "Settlement and velocity",
    words:
      "Full up to one velocity, none above another, a straight line between. The velocity is that of the flow while it runs: in the bore of a pipe, between the clean bars of a rack.",
    formulas: [coded("φV = min(1, max(0, (V0 − V)/(V0 − V1)))")],
    where: [
      ["φ_V", "share of settlers that velocity lets on", ""],
      ["V", "water velocity along the surface", "m/s"],
      ["V_1", "velocity up to which settlement is full", "m/s"],
      ["V_0", "velocity at which there is none", "m/s"],
    ],
    sources: ["claudi-mackie-1994"],
    computedBy: by("mussels/surface.ts", "velocityFactor"),
  },
  {
    title: "Settlement and depth",
    words: "Full down to one depth, none below another, a straight line between; both by species.",
    formulas: [coded("φy = min(1, max(0, (y0 − y)/(y0 − y1)))")],
    where: [
      ["φ_y", "share of settlers that depth lets on", ""],
      ["y", "depth below the month's mean level", "m"],
      ["y_1", "depth down to which settlement is full", "m"],
      ["y_0", "depth at which there is none", "m"],
    ],
    sources: ["mead-depth", "powermag-2019", "project-judgement"],
    computedBy: by("mussels/surface.ts", "depthFactor"),
  },
  {
    title: "Settlement and growth in water that stands",
    words:
      "Of the share of the month in which water runs through a plant's rack, penstock or line. Nothing settles or grows in water that stands throughout; a day of running keeps it fresh for some days. Degree-days of growth have the same share.",
    formulas: [coded("φS = min(1, r d)")],
    where: [
      ["φ_S", "share of settlers, and of degree-days, that fresh water brings", ""],
      ["r", "hours running over those of the month", ""],
      ["d", "days that a day of running keeps the water fresh", "d"],
    ],
    sources: ["project-judgement"],
    computedBy: by("mussels/surface.ts", "freshnessFactor"),
  },
  {
    title: "Settlement on a surface",
    words: "The share of the lake's settlers that a surface receives in a month.",
    formulas: [coded("s = φT φy φV φS φw")],
    where: [
      ["s", "share of settlers", ""],
      ["φ_T", "1 in the spawning season by surface temperature, else 0", ""],
      ["φ_y", "share by depth", ""],
      ["φ_V", "share by velocity", ""],
      ["φ_S", "share by fresh water", ""],
      ["φ_w", "share of the month under water", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("mussels/surface.ts", "surfaceMonths"),
  },
  {
    title: "Deaths of the settled",
    words: "Mussels live shorter the less the water suits them.",
    formulas: [coded("m = m1 w^(−x)")],
    where: [
      ["m", "mortality", "1/yr"],
      ["m_1", "mortality in water that suits them", "1/yr"],
      ["w", "weight of the water's suitability, 0 to 1", ""],
      ["x", "exponent", ""],
    ],
    sources: ["karatayev-2006", "davis-2015"],
    computedBy: by("mussels/growth.ts", "yearlyMortality"),
  },
  {
    title: "Thickness of the layer",
    words:
      "Mass over bulk density: the mean over the surface of the room that mussels take as shells pack. At the limit of crowding that is about the length of one shell. Shells that stand apart rise above it; what they do to the flow is in the roughness, which follows from their length and cover.",
    formulas: [coded("t = M/ρb")],
    where: [
      ["t", "thickness", "m"],
      ["M", "live wet mass", "kg/m²"],
      ["ρ_b", "bulk density of the layer", "kg/m³"],
    ],
    sources: ["trade-practice"],
    computedBy: by("mussels/layer.ts", "layerThickness"),
  },
  {
    title: "Mussels killed on drained ground",
    words:
      "The band between the lowest and the highest level of a year is cut into 20 cells (into 20 over the number of its years for a record, but 8 at least) that are low at its bottom, where one day more of drying changes most. Each cell is grown in its middle and stands for its height. A dry run that begins within a month meets mussels that have grown in that month's days under water.",
    formulas: [coded("K = Σ k(zi)·Δzi"), coded("zl + (zh − zl)·(i/n)²", "end of a cell")],
    where: [
      ["K", "live mass killed over a metre of width of upright ground", "kg/m"],
      ["k", "live mass killed in a year on a square metre", "kg/m²"],
      ["z_i", "elevation of the middle of a cell", "m"],
      ["Δz_i", "height of the cell", "m"],
      ["z_l", "lowest level of the year", "m"],
      ["z_h", "highest level", "m"],
      ["i", "number of the cell, from the bottom", ""],
      ["n", "number of cells", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("mussels/exposed-band.ts", "groundKills"),
  },
];

export const musselRelations: RelationGroup = {
  title: "The mussels",
  relations: [...growthRelations, ...monthRelations, ...dryingRelations],
};
