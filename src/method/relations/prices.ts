import { by, coded, type RelationGroup } from "./relation.js";

export const priceRelations: RelationGroup = {
  title: "Prices and rates",
  relations: [
    {
      title: "Prices of another year",
      words: "What a price of the assumptions is multiplied by to be in prices of the study's year.",
      formulas: [coded("f = I(q)/I(p)")],
      where: [
        ["f", "factor on the price", ""],
        ["I", "index of consumer prices, or of construction for works, mean of the year", ""],
        ["q", "the study's price year", ""],
        ["p", "year of the price", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/price-index.ts", "priceFactor"),
    },
    {
      title: "Index of works beyond its years",
      words: "Years that the index of construction lacks at either end follow consumer prices.",
      formulas: [coded("I(q) = I(l) J(q)/J(l)")],
      where: [
        ["I", "index of construction", ""],
        ["J", "index of consumer prices", ""],
        ["q", "a year that the index of construction lacks", ""],
        ["l", "the nearest year that it holds", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/price-index.ts", "continuedBy"),
    },
    {
      title: "Rise of a price above general inflation",
      words:
        "From the middle of the price year to the flow, for groups of costs that the study names; 1 for all others.",
      formulas: [coded("e(t) = (1+s)^y")],
      where: [
        ["e", "price in year t for 1 in the price year, in constant prices", ""],
        ["s", "yearly rise above general inflation", "1/yr"],
        ["y", "years from the middle of the price year to the flow of year t", "yr"],
        ["t", "year", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/escalation.ts", "growthFactors"),
    },
    {
      title: "Yearly costs with rises",
      words: "What the same lines cost in each year, in prices of the price year.",
      formulas: [coded("C(t) = C + Σ (e(t) − 1) Cg")],
      where: [
        ["C", "a year's cost at prices of the price year", "money"],
        ["C_g", "its part in a group whose price rises, summed over these", "money"],
        ["e", "rise of that group's price", ""],
        ["t", "year", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/price-rises.ts", "inEachYear"),
    },
    {
      title: "Infestation with rises",
      words:
        "Costs depend on the year of the infestation and rises on the calendar year: a group whose price rises has its own weights, with the rise beside each discount factor.",
      formulas: [coded("X = Σ C(a) u(a) + Σ Cg(a) (ug(a) − u(a))")],
      where: [
        ["X", "expected cost of infestation", "money"],
        ["C", "cost in the year a of an infestation", "money"],
        ["C_g", "its part in a group whose price rises, summed over these", "money"],
        ["u", "weight of the year a of an infestation", ""],
        ["u_g", "the same with the rise of the group", ""],
        ["a", "year of the infestation", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("present-value.ts", "presentValueOf"),
    },
    {
      title: "Nominal rate",
      words: "The rate for amounts in money of their years that goes with a real rate.",
      formulas: [coded("m = (1+r)(1+i) − 1")],
      where: [
        ["m", "nominal discount rate", "1/yr"],
        ["r", "real discount rate", "1/yr"],
        ["i", "general inflation", "1/yr"],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/escalation.ts", "nominalRate"),
    },
    {
      title: "Present value of nominal flows",
      words:
        "Amounts in money of their years at the nominal rate, brought back to prices of the price year; with flows at the year's end the exponent is −t. It equals the present value of constant prices at the real rate.",
      formulas: [coded("P = Σ M(t) (1+m)^−(t−½)/(1+i)^b")],
      where: [
        ["P", "present value in prices of the price year", "money"],
        ["M", "flow of year t in money of that year", "money"],
        ["m", "nominal discount rate", "1/yr"],
        ["i", "general inflation", "1/yr"],
        ["b", "years from the middle of the price year to the present", "yr"],
        ["t", "year", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/escalation.ts", "presentValueOfNominal"),
    },
    {
      title: "Federal water-planning rate",
      words:
        "The mean yield to the nearest eighth of a percent, and at most a quarter point from the rate of the year before; used where the study asks for it.",
      formulas: [coded("d = min(max(round(y), d1−2), d1+2)")],
      where: [
        ["d", "rate in eighths of a percent", ""],
        ["y", "mean yield of Treasury securities with 15 years or more left, in eighths of a percent", ""],
        ["d_1", "rate of the year before in eighths of a percent", ""],
      ],
      sources: ["pl-93-251"],
      computedBy: by("money/planning-rate.ts", "planningRate"),
    },
    {
      title: "Equipment counted when it is bought",
      words:
        "Purchases, and what the last one is worth at the horizon's end by straight line; their difference is the cost in cash.",
      formulas: [coded("Z = Σ p e(τ) (1+r)^−τ"), coded("R = w e(l) (1+r)^−n")],
      where: [
        ["Z", "present value of purchases", "money"],
        ["R", "present value of what is left", "money"],
        ["p", "price", "money"],
        ["e", "rise of the price", ""],
        ["r", "real discount rate", "1/yr"],
        ["τ", "time of a purchase from the start of year 1", "yr"],
        ["l", "time of the last purchase", "yr"],
        ["w", "value of the last purchase at the horizon's end", "money"],
        ["n", "horizon", "yr"],
      ],
      sources: ["trade-practice"],
      computedBy: by("money/cash-basis.ts", "cashBasis"),
    },
  ],
};
