import { by, coded, type RelationGroup } from "./relation.js";

export const outcomeRelations: RelationGroup = {
  title: "Simulated outcomes",
  relations: [
    {
      title: "Range of a quantity typed as one number",
      words:
        "By what the quantity is: counts, prices, dimensions, flows, water and times by a share of the value, temperatures by kelvins, shares and chances by log odds. Drawn as beta-PERT between the ends, with the value as the likeliest. An author's own range takes its place; what is called exact, is chosen or is a limit is not varied.",
      formulas: [coded("x (1 ± s)"), coded("x ± s"), coded("ln(q/(1−q)) = ln(p/(1−p)) ± s")],
      where: [
        ["x", "value as typed", ""],
        ["s", "size for what the quantity is", ""],
        ["p", "share as typed", ""],
        ["q", "end of its range", ""],
      ],
      sources: ["project-judgement"],
      computedBy: by("uncertainty/reach.ts", "reached"),
    },
    {
      title: "Beta-PERT",
      words:
        "A beta distribution between the low and the high end; the likeliest value weighs four times an end.",
      formulas: [coded("α = 1 + 4(m−a)/(b−a)"), coded("β = 1 + 4(b−m)/(b−a)"), coded("μ = (a+4m+b)/6")],
      where: [
        ["α", "first shape of the beta distribution", ""],
        ["β", "second", ""],
        ["μ", "mean", ""],
        ["a", "low end", ""],
        ["m", "likeliest value", ""],
        ["b", "high end", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("uncertainty/pert.ts", "pert"),
    },
    {
      title: "Shares learned from counts",
      words:
        "The boats of a comparable program count in part, beside half a boat with and half a boat without the property (Jeffreys); one's own boats are then added in full. A share that was entered as a number weighs as a number of boats (assumption learning.prior-sample), but as half a boat of either kind at least. The estimate is the first number over the sum of both.",
      formulas: [coded("α = 1/2 + w f"), coded("β = 1/2 + w (n − f)")],
      where: [
        ["α", "boats with the property", ""],
        ["β", "boats without it", ""],
        ["w", "weight of one boat of the comparable program", ""],
        ["n", "boats that it looked at", ""],
        ["f", "boats with the property among them", ""],
      ],
      sources: ["project-judgement"],
      computedBy: by("program/learning.ts", "beliefFromCounts"),
    },
    {
      title: "Quantities that are off together",
      words:
        "Months of a list, and one quantity of several options, stand at the same place in their ranges in each simulated outcome.",
      formulas: [coded("x + u (x − l)", "u < 0"), coded("x + u (h − x)", "u ≥ 0")],
      where: [
        ["u", "place drawn, −1 at the low ends, 1 at the high ends", ""],
        ["x", "value as typed", ""],
        ["l", "low end of its range", ""],
        ["h", "high end of its range", ""],
      ],
      sources: ["project-judgement"],
      computedBy: by("uncertainty/reach.ts", "valueAtPlace"),
    },
    {
      title: "Error of a mean of outcomes",
      words:
        "Lakes and futures come in blocks, each a Latin hypercube of its own, so that the means of the blocks are independent. Limits of shares and quantiles are by Student's t with one degree of freedom less than there are blocks.",
      formulas: [coded("s/√m")],
      where: [
        ["s", "standard deviation of the blocks' means", "unit of the mean"],
        ["m", "number of blocks", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("futures/clusters.ts", "clusteredMean"),
    },
  ],
};
