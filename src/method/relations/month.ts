import { by, coded, type Relation } from "./relation.js";

/** What happens on a surface in a month, in its order, and what is counted of it. */
export const monthRelations: readonly Relation[] = [
  {
    title: "Crowding",
    words:
      "Growth starts on bare ground in the January of the year of establishment. Each month, in this order: the dry run kills; the living thin out and grow older by a month; settlers take their share of the space that is free then; crowding sheds the same share of all cohorts, the settlers among them, where the cover before they came was beyond its limit; what stands now is the month's layer, which costs and limits are reckoned by; then the surface is bare if the month is one of cleaning.",
    formulas: [
      coded("N exp(−m/12)", "living on"),
      coded("n D s max(0, 1 − c/cmax)", "settlers"),
      coded("c = Σ N L²"),
    ],
    where: [
      ["N", "live mussels of a cohort", "1/m²"],
      ["m", "mortality", "1/yr"],
      ["n", "settlers a month at capacity on a bare surface", "1/m²"],
      ["D", "lake density over capacity times suitability, less what a protection keeps off", ""],
      ["s", "share of settlers on this surface", ""],
      ["c", "cover, summed over cohorts", ""],
      ["c_max", "largest cover", ""],
      ["L", "shell length", "m"],
    ],
    sources: ["karatayev-2006", "cwcb-133969", "project-judgement"],
    computedBy: by("mussels/grown-months.ts", "growTo"),
  },
  {
    title: "Growth of old shells",
    words:
      "A cohort is what settled in one month. Its shells grow for 84 months, since few live longer, and keep their length from then on. It is followed to the horizon's end, however few are left of it.",
    formulas: [coded("a < 84")],
    where: [["a", "months since the cohort settled", ""]],
    sources: ["project-judgement"],
    computedBy: by("mussels/shell-table.ts", "shellTable"),
  },
  {
    title: "A mature infestation",
    words:
      "The lake at the largest density of the horizon. A surface that nobody touches swings between crowding and new settlement: what it carries is the thickest layer of seven years after a run-up of three. A cost a year once established is the mean from the tenth year on, or from the year in which the density comes within a hundredth of its largest if that is later; over five years, or as many more as hold whole cycles of all cleanings, where the horizon has them.",
    formulas: [coded("D = max(D1, D2, …)")],
    where: [
      ["D", "density over capacity in a mature infestation", ""],
      ["D_1", "density in the first month", ""],
      ["D_2", "in the second, and so on", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/plans/untouched.ts", "matureCourse"),
  },
  {
    title: "When cleaning begins",
    words:
      "On the first date of the plan at which the layer is worth a visit; every date after it is kept, as a routine. Dates of an interval count from the January of establishment: every 6 months is the end of June and of December.",
    formulas: [coded("t ≥ tv")],
    where: [
      ["t", "thickness of the layer at the end of the month", "m"],
      ["t_v", "thinnest layer that is worth a visit", "m"],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/plans/course.ts", "courseOf"),
  },
  {
    title: "When a protection is in place",
    words:
      "In each month in which mussels are regularly found in the lake, and from its first use on where the plan has dates. It costs in these months, and keeps settlers off in those in which mussels are regularly found. Inspections that lead to cleanings are made in the latter.",
    formulas: [coded("D ≥ Df")],
    where: [
      ["D", "lake density over capacity times suitability", ""],
      ["D_f", "density from which mussels are regularly found", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("structures/protection.ts", "isInPlace"),
  },
];
