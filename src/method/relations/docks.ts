import { by, coded, type RelationGroup } from "./relation.js";

export const dockRelations: RelationGroup = {
  title: "Docks, ramps and what is carted away",
  relations: [
    {
      title: "Disposal",
      words:
        "Work with tools takes the mussels whole; treatments, drying and frost leave the shells, a share of the live mass.",
      formulas: [coded("M (c + p)")],
      where: [
        ["M", "mass carted away", "kg"],
        ["c", "price of loading and trucking", "money/kg"],
        ["p", "tipping fee", "money/kg"],
      ],
      sources: ["project-judgement"],
      computedBy: by("structures/plan-work.ts", "disposal"),
    },
    {
      title: "Docks, buoys and booms",
      words:
        "A layer shortens their life in proportion to its mass, up to a mass at which the wear counts in full, and weighs on what floats: the load of that limit is the submerged weight over the buoyancy to spare.",
      formulas: [coded("W = n w R min(1, M/M0)/12"), coded("x = σ M/B")],
      where: [
        ["W", "early replacement in a month", "money"],
        ["n", "number of pieces", ""],
        ["w", "extra wear under a full layer, of the replacement cost", "1/yr"],
        ["R", "replacement cost of one", "money"],
        ["M", "live mass of the layer", "kg/m²"],
        ["M_0", "mass at which the wear counts in full", "kg/m²"],
        ["x", "load of the limit", ""],
        ["σ", "submerged over wet weight", ""],
        ["B", "buoyancy to spare, over the wetted area", "kg/m²"],
      ],
      sources: ["project-judgement"],
      computedBy: by("structures/kinds/dock.ts", "dockComponents"),
    },
    {
      title: "Shells on a ramp",
      words:
        "What drying and frost kill on the ramp in a year and on the ground from which shells wash onto it, shells only, spread over the ground on which anything was killed.",
      formulas: [coded("M = K b √(1 + m^(−2)) σ g"), coded("t = M/(F ρ)")],
      where: [
        ["M", "mass of shells of the year", "kg"],
        ["K", "live mass killed over a metre of width of upright ground, top to bottom of the ramp", "kg/m"],
        ["b", "width of the ramp", "m"],
        ["m", "slope, rise over run", ""],
        ["σ", "mass of the shells over the live mass", ""],
        ["g", "ground that shells wash from, over that of the ramp", ""],
        ["t", "thickness of the year's shells", "m"],
        ["F", "area of the ramp on which anything was killed", "m²"],
        ["ρ", "mass of loose shells by their volume", "kg/m³"],
      ],
      sources: ["project-judgement"],
      computedBy: by("structures/ramp.ts", "litterByYear"),
    },
    {
      title: "Sweeping a ramp",
      words:
        "As often as the shells that lie on the ramp have reached the thickness that is tolerated. What then still lies there is carried over to the next year.",
      formulas: [
        coded("s = ⌊(ℓ + t)/t0⌋"),
        coded("C = s (F r + F ρ t0 (c + p) + d f N)"),
        coded("ℓ + t − s t0", "left"),
      ],
      where: [
        ["s", "sweeps of the year", ""],
        ["ℓ", "thickness left from the year before", "m"],
        ["t", "thickness of the year's shells", "m"],
        ["t_0", "thickness that is tolerated", "m"],
        ["C", "cost of the year", "money"],
        ["F", "area of the ramp on which anything was killed", "m²"],
        ["r", "price of sweeping by area", "money/m²"],
        ["ρ", "mass of loose shells by their volume", "kg/m³"],
        ["c", "price of loading and trucking", "money/kg"],
        ["p", "tipping fee", "money/kg"],
        ["d", "days closed for a sweep", "d"],
        ["f", "launch fee", "money"],
        ["N", "launches on a day, the mean of the year", "1/d"],
      ],
      sources: ["project-judgement"],
      computedBy: by("structures/ramp.ts", "rampYears"),
    },
  ],
};
