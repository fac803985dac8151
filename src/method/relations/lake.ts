import { by, coded, type RelationGroup } from "./relation.js";

export const lakeRelations: RelationGroup = {
  title: "The lake",
  relations: [
    {
      title: "Level of a day",
      words:
        "Where the study gives points of a schedule, they are joined by straight lines, the last to the first; a record has the level of every day.",
      formulas: [coded("z = z1 + (z2 − z1)·(d − d1)/(d2 − d1)")],
      where: [
        ["z", "level on day d", "m"],
        ["z_1", "level of the point before", "m"],
        ["z_2", "level of the point after", "m"],
        ["d", "day", "d"],
        ["d_1", "day of the point before", "d"],
        ["d_2", "day of the point after", "d"],
      ],
      sources: ["trade-practice"],
      computedBy: by("lake/levels.ts", "dailyElevations"),
    },
    {
      title: "Dry run",
      words: "An elevation is exposed on the days in a row on which the water stands below it.",
      formulas: [coded("z(d) < e")],
      where: [
        ["z", "level of the lake", "m"],
        ["d", "day", "d"],
        ["e", "elevation of the structure", "m"],
      ],
      sources: ["trade-practice"],
      computedBy: by("lake/levels.ts", "dryRuns"),
    },
    {
      title: "Storage between two levels",
      words: "Trapezoids on the areas of the storage table; area is linear between its rows.",
      formulas: [coded("S = Σ (A1 + A2)/2 · (z2 − z1)")],
      where: [
        ["S", "storage", "m³"],
        ["A_1", "lake area at the lower elevation of a slice", "m²"],
        ["A_2", "at the upper", "m²"],
        ["z_1", "lower elevation of the slice", "m"],
        ["z_2", "upper elevation", "m"],
      ],
      sources: ["trade-practice"],
      computedBy: by("lake/storage.ts", "storageBetween"),
    },
    {
      title: "Ground exposed",
      words: "The lake's area at the high level less that at the low one.",
      formulas: [coded("B = A(high) − A(low)")],
      where: [
        ["B", "ground exposed", "m²"],
        ["A", "lake area", "m²"],
      ],
      sources: ["trade-practice"],
      computedBy: by("lake/storage.ts", "exposedArea"),
    },
    {
      title: "Habitat suitability",
      words:
        "Each measured variable falls in a published class with a weight, which leads to that of the next class over a part of the poorer class beside their bound; the least suitable is the limiting factor. Heat is that of the depth that stays coolest; a study gives oxygen without a depth, so that water without oxygen is poor at every depth, by the class of its oxygen. A variable is said to decide alone if its weight is below that of every other, and to lie near the edge of a class if a measurement by its error lower or higher falls in another. The weight scales settlement and the chance that arrivals found a population.",
      formulas: [coded("w = min(w1, w2, …)")],
      where: [
        ["w", "suitability, 0 to 1", ""],
        ["w_1", "weight of the class of the first variable", ""],
        ["w_2", "of the second, and so on", ""],
      ],
      sources: ["whittier-2008", "reclamation-2008", "mackie-claudi-2010", "davis-2015"],
      computedBy: by("lake/suitability.ts", "suitability"),
    },
    {
      title: "Temperature of the water",
      words:
        "Two monthly values as entered: one of the surface and one of the deep water. What lies at the depth of the thermocline or above it has the first, what lies below it the second, without a passage between them.",
      formulas: [coded("y ≤ yt", "surface"), coded("y > yt", "deep")],
      where: [
        ["y", "depth below the month's mean level", "m"],
        ["y_t", "depth of the thermocline", "m"],
      ],
      sources: ["trade-practice"],
      computedBy: by("lake/temperature.ts", "waterTemperature"),
    },
    {
      title: "Degree-days",
      words: "Warmth of a month above the temperature at which shells begin to grow.",
      formulas: [coded("DD = d·max(0, T − Tb)")],
      where: [
        ["DD", "degree-days of the month", "°C·d"],
        ["d", "days in the month", "d"],
        ["T", "mean water temperature at the surface's depth", "°C"],
        ["T_b", "base temperature", "°C"],
      ],
      sources: ["trade-practice"],
      computedBy: by("lake/temperature.ts", "degreeDays"),
    },
  ],
};
