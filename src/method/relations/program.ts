import { by, coded, type RelationGroup } from "./relation.js";

export const programRelations: RelationGroup = {
  title: "What a program costs and what covers it",
  relations: [
    {
      title: "Cost of one inspection",
      words: "The whole program of a year with a clean lake, before fees, over the boats that are looked at.",
      formulas: [coded("c = C/N")],
      where: [
        ["c", "cost of one inspection", "money"],
        ["C", "cost of the program a year, before fees and other revenue", "money"],
        ["N", "boats checked a year", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("program/inspection-cost.ts", "inspectionCost"),
    },
    {
      title: "Full-cost fee",
      words:
        "The fee at which fees and other revenue bring in what the program costs: equal for each paying boat, or all present fees times a factor. The share of boats that a fee keeps away is proportional to the fee, and as stated at the fee for which the study states it.",
      formulas: [
        coded("f = 2c/(1 + √(1 − 4dc))"),
        coded("c = C/Σ p"),
        coded("k = 2b/(1 + √(1 − 4bq))"),
        coded("b = C/Σ m g"),
        coded("q = d Σ m g²/Σ m g"),
      ],
      where: [
        ["f", "full-cost fee, equal for each paying boat", "money"],
        ["k", "factor on all present fees", ""],
        ["C", "cost of the program a year, net of other revenue", "money"],
        ["p", "boats that would pay a fee in a year if it kept nobody away", ""],
        ["m", "payments of that fee in a year if it kept nobody away", ""],
        ["g", "present fee", "money"],
        ["d", "share that each unit of money of a fee keeps away", "1/money"],
        ["c", "cost for each boat that would pay", "money"],
        ["b", "cost over what the present fees would bring in if they kept nobody away", ""],
        ["q", "share that the present fees keep away, weighed by what they bring in", ""],
      ],
      sources: ["trade-practice"],
      computedBy: by("program/fees.ts", "fullCostFee"),
    },
    {
      title: "Increment over the current program",
      words: "The net benefit with the current program in place of no program.",
      formulas: [coded("B = (XE − X) − (K − KE)")],
      where: [
        ["B", "net benefit of changing from the current program", "money"],
        ["X", "expected cost of infestation with the option", "money"],
        ["X_E", "the same with the current program", "money"],
        ["K", "cost of the option", "money"],
        ["K_E", "cost of the current program", "money"],
      ],
      sources: ["trade-practice"],
      computedBy: by("increments.ts", "increment"),
    },
  ],
};
