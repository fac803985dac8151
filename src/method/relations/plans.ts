import { by, coded, type RelationGroup } from "./relation.js";

export const planRelations: RelationGroup = {
  title: "Protection plans and levels",
  relations: [
    {
      title: "Cost of an installation",
      words:
        "Capital grows more slowly than size. A year of it costs capital recovery over its life at the study's real rate, and upkeep as a share of the capital.",
      formulas: [coded("K = k s0 (s/s0)^m"), coded("A = K (i/(1 − (1+i)^−n) + u)")],
      where: [
        ["K", "capital", "money"],
        ["k", "capital per unit of size at the reference", "money/m² or money/(m³/s)"],
        ["s", "size: wall coated or doubled, or flow treated", "m² or m³/s"],
        ["s_0", "reference size", "m² or m³/s"],
        ["m", "exponent of size", ""],
        ["A", "cost a year", "money"],
        ["i", "real discount rate", "1/yr"],
        ["n", "life", "yr"],
        ["u", "upkeep over capital", "1/yr"],
      ],
      sources: ["six-tenths"],
      computedBy: by("structures/protection.ts", "protectionOf"),
    },
    {
      title: "Days of dosing that kill",
      words:
        "Between two published times linear in temperature on the logarithm of the hours; quagga dies sooner.",
      formulas: [coded("h = hc (hw/hc)^((T − Tc)/(Tw − Tc))"), coded("d = q h/24")],
      where: [
        ["h", "hours of dosing that kill zebra mussels", "h"],
        ["h_c", "the same at the colder temperature", "h"],
        ["h_w", "at the warmer", "h"],
        ["T", "water temperature of the month", "°C"],
        ["T_c", "colder temperature", "°C"],
        ["T_w", "warmer temperature", "°C"],
        ["d", "days of dosing", "d"],
        ["q", "factor of the species, 1 for zebra mussels", ""],
      ],
      sources: ["rajagopal-2002", "brady-1996"],
      computedBy: by("structures/oxidant.ts", "killDays"),
    },
    {
      title: "Cost of dosing by size",
      words:
        "A power law between the published cost of a small plant and that of a large one; level beyond them.",
      formulas: [coded("c = c1 (Q/Q1)^(ln(c2/c1)/ln(Q2/Q1))")],
      where: [
        ["c", "cost of a volume dosed", "money/m³"],
        ["Q", "mean flow of the year", "m³/s"],
        ["c_1", "cost at the smaller plant", "money/m³"],
        ["Q_1", "its flow", "m³/s"],
        ["c_2", "cost at the larger plant", "money/m³"],
        ["Q_2", "its flow", "m³/s"],
      ],
      sources: ["chakraborti-2016"],
      computedBy: by("structures/oxidant.ts", "costAtSize"),
    },
    {
      title: "Heat for a line",
      words: "The line's flow is heated from the water's temperature to one that kills, and held there.",
      formulas: [coded("E = c Q t·max(0, Tk − T)")],
      where: [
        ["E", "energy of one treatment", "kWh"],
        ["c", "heat capacity of water", "kWh/(m³K)"],
        ["Q", "flow of the line", "m³/s"],
        ["t", "time for which it is held", "s"],
        ["T_k", "temperature that kills", "°C"],
        ["T", "temperature of the water in the month, at the depth of the part", "°C"],
      ],
      sources: ["trade-practice"],
      computedBy: by("structures/plan-work.ts", "workLines"),
    },
    {
      title: "Levels of a record",
      words:
        "Each year of a record is one possible operating year, all alike in chance: costs are the mean over them, and a plan must keep its limits in every one.",
      formulas: [coded("L = Σ Li/n")],
      where: [
        ["L", "cost in a year of an infestation", "money"],
        ["L_i", "the same under the levels of year i of the record", "money"],
        ["n", "years of the record", ""],
      ],
      sources: ["project-judgement"],
      computedBy: by("structures/upkeep.ts", "keepInService"),
    },
    {
      title: "Storage given up to a schedule",
      words: "The largest of all days of the mean year.",
      formulas: [coded("W = max(0, V(z(d)) − V(y(d)))")],
      where: [
        ["W", "storage given up", "m³"],
        ["V", "storage at a level", "m³"],
        ["z", "the lake's own level", "m"],
        ["y", "level under the schedule", "m"],
        ["d", "day", "d"],
      ],
      sources: ["trade-practice"],
      computedBy: by("schedule-cost.ts", "storageLost"),
    },
    {
      title: "Cost of following a schedule",
      words:
        "Mussels apart: energy not made, water from elsewhere, pumping and launch fees lost, month by month, and storage given up.",
      formulas: [coded("O = Σ p (y − x) + w W")],
      where: [
        ["O", "cost of a year; negative where it saves", "money"],
        ["p", "price in the month", "money per unit"],
        ["y", "amount in the month under the schedule", "unit"],
        ["x", "amount under the lake's own levels", "unit"],
        ["w", "cost of a year without a unit of storage", "money/m³"],
        ["W", "storage given up", "m³"],
      ],
      sources: ["trade-practice"],
      computedBy: by("schedule-cost.ts", "operatingLines"),
    },
    {
      title: "Cost of an option in a year",
      words:
        "The program runs in full while no mussels are known, less in its first years if it grows, and at a share from then on; a schedule of levels is followed from the year in which mussels are noticed, and infestation costs are then those under it.",
      formulas: [coded("K(t) = g(t) G (1 − H(t−1) + a H(t−1)) + O N(t)")],
      where: [
        ["K", "expected cost of program and schedule in year t", "money"],
        ["t", "year", ""],
        ["g", "share of its full cost that the program takes in year t, 1 once it has grown", ""],
        ["G", "cost of the program a year, in full", "money"],
        ["H", "chance of being known to be infested at the end of a year", ""],
        ["N", "chance of being known to be infested in a year", ""],
        ["a", "share of the program kept after infestation", ""],
        ["O", "cost of following the schedule a year", "money"],
      ],
      sources: ["trade-practice"],
      computedBy: by("option.ts", "optionResult"),
    },
  ],
};
