import { by, coded, type Relation, type RelationGroup } from "./relation.js";

const chance: readonly Relation[] = [
  {
    title: "Fouled boats set aside",
    words: "Declared by their owners, or not declared and found by the quick check.",
    formulas: [coded("1 − (1−d)(1−q)")],
    where: [
      ["d", "owners of risky boats who say so", ""],
      ["q", "risky boats not declared that the quick check finds", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("program/arrivals.ts", "setAsideShare"),
    beforeInfestation: true,
  },
  {
    title: "Boats that inspection and hot wash miss",
    words: "The two lines are bounds: the steps miss independently, or the same boats.",
    formulas: [coded("(1−i)(1−w)"), coded("1 − max(i, w)")],
    where: [
      ["i", "effect of inspection", ""],
      ["w", "effect of hot wash", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("program/arrivals.ts", "missedShare"),
    beforeInfestation: true,
  },
  {
    title: "Boats that slip through",
    words:
      "Fouled boats that are sealed, not met or not set aside, and of those set aside the ones that are neither refused nor made safe; a drying hold leaves part of what was missed alive.",
    formulas: [coded("x = 1 − a + a (1−r) m u"), coded("a = (1−s) c b")],
    where: [
      ["x", "share of fouled boats that reach the water", ""],
      ["a", "share met and set aside", ""],
      ["b", "share of the boats met that is set aside", ""],
      ["s", "share with a seal", ""],
      ["c", "launches in open hours over all launches", ""],
      ["r", "share of set-aside boats refused", ""],
      ["m", "share that inspection and hot wash miss, between the bounds", ""],
      ["u", "share alive after the drying hold, 1 where there is none", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("program/arrivals.ts", "arrivals"),
    beforeInfestation: true,
  },
  {
    title: "Chance of establishment in a year",
    words: "It rises with fouled arrivals and suitability; other pathways come as an independent cause.",
    formulas: [coded("h = 1 − exp(−(α F w)^c)·(1 − o)")],
    where: [
      ["h", "chance in a year", ""],
      ["α", "chance that one fouled launch founds a population", ""],
      ["F", "fouled launches that slip through", "1/yr"],
      ["w", "habitat suitability", ""],
      ["c", "shape: above 1 for an Allee effect", ""],
      ["o", "chance by other pathways", ""],
    ],
    sources: ["leung-2004"],
    computedBy: by("risk/hazard.ts", "yearlyHazard"),
    beforeInfestation: true,
  },
  {
    title: "Chance of being infested",
    words: "Established by the end of a year, under the same chance each year.",
    formulas: [coded("H = 1 − (1−h)^t")],
    where: [
      ["H", "chance of being infested by the end of year t", ""],
      ["h", "chance in a year", ""],
      ["t", "year", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/hazard.ts", "infestedByYear"),
    beforeInfestation: true,
  },
  {
    title: "Expected cost of a year",
    words:
      "The cost of each age of an infestation times the chance of that age: an exact sum, no sampling, from the year before.",
    formulas: [coded("E(t) = h L(t) + (1−h) E(t−1)")],
    where: [
      ["E", "expected cost in year t", "money"],
      ["L", "cost in the year t of an infestation", "money"],
      ["h", "chance in a year", ""],
      ["t", "year", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/expectation.ts", "expectedByYear"),
  },
];

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
    formulas: [coded("u(a) = Σ v(t) h(1−h)^(t−a)")],
    where: [
      ["u", "weight of the year a since establishment, summed from t = a to the horizon", ""],
      ["a", "year since establishment", ""],
      ["v", "discount factor", ""],
      ["h", "chance in a year", ""],
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
    words: "Loss avoided against program cost added to the option without a program, both present values.",
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
    beforeInfestation: true,
  },
  {
    title: "Break-even",
    words:
      "Where the net benefit is nothing: by a factor on every infestation cost, by the program's yearly cost, and by the yearly chances, which are searched since they enter in powers; so are the shares of fouled boats stopped and the horizons.",
    formulas: [coded("y = (K − K0)/(X0 − X)"), coded("A = (X0 − X + K0 − S)·G/(K − S)"), coded("B(h) = 0")],
    where: [
      ["y", "factor on infestation costs", ""],
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
    computedBy: by("break-even.ts", "breakEven"),
    beforeInfestation: true,
  },
];

export const moneyRelations: RelationGroup = { title: "Chance and money", relations: [...chance, ...worth] };
