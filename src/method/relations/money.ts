import { chanceRelations } from "./chance.js";
import { by, coded, type Relation, type RelationGroup } from "./relation.js";

const worth: readonly Relation[] = [
  {
    title: "Discounting",
    words:
      "At the year's end (first line) or in its middle (second), as the study says; the present is the start of year 1.",
    formulas: [coded("(1+r)^−t", "v"), coded("(1+r)^−(t−½)", "v")],
    where: [
      ["v", "present value of 1 in year t", ""],
      ["r", "real discount rate", "1/yr"],
      ["t", "year", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("money/interest.ts", "discountFactor"),
  },
  {
    title: "Weight of a year of infestation",
    words: "What one unit of cost in a year since establishment weighs in the present value.",
    formulas: [coded("u(a) = Σ v(t) N(t,t−a+1)")],
    where: [
      ["u", "weight of the year a since establishment, summed from t = a to the horizon", ""],
      ["a", "year since establishment", ""],
      ["v", "discount factor", ""],
      ["N", "chance of a detected infestation of that age; U in its place for losses before that", ""],
      ["t", "year", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/expectation.ts", "presentWeights"),
  },
  {
    title: "Equal yearly amount",
    words: "The yearly amount with the same present value, under the study's timing.",
    formulas: [coded("A = P/Σ v(t)")],
    where: [
      ["A", "yearly amount", "money"],
      ["P", "present value", "money"],
      ["v", "discount factor", ""],
      ["t", "year", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("money/interest.ts", "equivalentYearly"),
  },
  {
    title: "Capital recovery",
    words: "What a piece of equipment costs a year over its life, paid at each year's end.",
    formulas: [coded("A/P = i/(1 − (1+i)^−n)")],
    where: [
      ["A", "yearly cost", "money"],
      ["P", "price", "money"],
      ["i", "real discount rate", "1/yr"],
      ["n", "life", "yr"],
    ],
    sources: ["trade-practice"],
    computedBy: by("money/interest.ts", "capitalRecoveryFactor"),
  },
  {
    title: "Benefit–cost ratio and net benefit",
    words: "Damage avoided against program cost added to the option without a program, both present values.",
    formulas: [coded("R = (X0 − X)/(K − K0)"), coded("B = (X0 − X) − (K − K0)")],
    where: [
      ["R", "benefit–cost ratio", ""],
      ["B", "net benefit", "money"],
      ["X", "expected cost of infestation with the option", "money"],
      ["X_0", "the same without a program", "money"],
      ["K", "cost of the option", "money"],
      ["K_0", "cost without a program", "money"],
    ],
    sources: ["trade-practice"],
    computedBy: by("compare.ts", "compare"),
  },
  {
    title: "Two accounts",
    words:
      "Structures alone: damage that is computed, duties and policies that staff entered, told apart, with the ratio without the duties and without the policies. With the other losses entered: recreation, property, curtailed deliveries and other waters join what each simulated outcome costs, known of or not, and net benefit, ratio and chance to pay are taken over the same outcomes.",
    formulas: [coded("R = (L − D)/C")],
    where: [
      ["R", "benefit–cost ratio without one account", ""],
      ["L", "damage, duties and policies avoided", "money"],
      ["D", "the duties, or the policies, among them", "money"],
      ["C", "added cost of the option", "money"],
    ],
    sources: ["project-judgement"],
    computedBy: by("money/account.ts", "ratioWithout"),
  },
  {
    title: "Break-even",
    words:
      "Where the net benefit is nothing: by a factor on all damage, by the program's yearly cost, and by the yearly chances, which are searched since they enter in powers; so are the shares of fouled boats stopped and the horizons.",
    formulas: [coded("y = (K − K0)/(X0 − X)"), coded("A = (X0 − X + K0 − S)·G/(K − S)"), coded("B(h) = 0")],
    where: [
      ["y", "factor on damage", ""],
      ["A", "break-even cost of the program a year", "money"],
      ["G", "cost of the program a year", "money"],
      ["S", "cost of following a schedule of levels", "money"],
      ["B", "net benefit", "money"],
      ["h", "chance in a year without the program", ""],
      ["X", "expected cost of infestation with the option", "money"],
      ["X_0", "the same without a program", "money"],
      ["K", "cost of the option", "money"],
      ["K_0", "cost without a program", "money"],
    ],
    sources: ["trade-practice"],
    computedBy: by("break-even/break-even.ts", "breakEven"),
  },
  {
    title: "Break-even by chance",
    words:
      "A factor on the foundings by boats of both options alike, from next to nothing to near certainty; printed as the chance of a first year without the program that it makes. Held: other ways in, what each option stops, all costs and plans.",
    formulas: [coded("B(x) = 0")],
    where: [
      ["B", "net benefit", "money"],
      ["x", "factor on foundings by boats", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("break-even/hazard.ts", "breakEvenHazards"),
  },
  {
    title: "Break-even by what is stopped",
    words:
      "The share of fouled boats that the option stops at its full size, instead of what its steps stop; fewer in years in which it has not grown. Held: its cost, the boats, other ways in, the option without a program.",
    formulas: [coded("B(s) = 0")],
    where: [
      ["B", "net benefit", "money"],
      ["s", "share of fouled boats stopped", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("break-even/stopped.ts", "breakEvenStoppedShares"),
  },
  {
    title: "Break-even by horizon",
    words:
      "Whole years from one to the study's horizon. Costs of each year stay as they are for the whole horizon; plans are not chosen anew.",
    formulas: [coded("B(n) = Σ v(t) (C₀(t) − C(t))")],
    where: [
      ["B", "net benefit over the years", "money"],
      ["n", "years counted", "yr"],
      ["v", "discount factor", ""],
      ["t", "year", ""],
      ["C₀", "expected cost of the year without a program", "money"],
      ["C", "the same with the option", "money"],
    ],
    sources: ["trade-practice"],
    computedBy: by("break-even/horizon.ts", "breakEvenHorizons"),
  },
];

export const moneyRelations: RelationGroup = {
  title: "Chance and money",
  relations: [...chanceRelations, ...worth],
};
