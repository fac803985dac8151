import { by, coded, type Relation, type RelationGroup } from "./relation.js";

const chance: readonly Relation[] = [
  {
    title: "Coverage by open hours",
    words:
      "Launches in open hours over all launches, summed over day types, sites and hours. Within an hour launches come evenly. Used where an option gives its open hours in place of its coverage.",
    formulas: [coded("c = Σ(n q o)/Σ(n q)"), coded("o = max(0, min(e, h + 1) − max(b, h))")],
    where: [
      ["c", "share of the launches met in open hours", ""],
      ["n", "days of a type in a year", "1/yr"],
      ["q", "launches at a site in an hour of such a day", ""],
      ["o", "part of the hour that the station is open", ""],
      ["h", "hour of the day at which the hour begins", "h"],
      ["b", "opening", "h"],
      ["e", "closing", "h"],
    ],
    sources: ["project-judgement"],
    computedBy: by("program/traffic.ts", "coverage"),
  },
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
  },
  {
    title: "Foundings by boats in a year",
    words:
      "Fouled launches of each class that get through, each with the chance that it founds a population in suitable water; with an exponent above 1 many do more than each alone.",
    formulas: [coded("μ = Σ α F · (F/F₀)^(c−1)")],
    where: [
      ["μ", "foundings a year", "1/yr"],
      ["α", "chance that one fouled launch founds a population", ""],
      ["F", "fouled launches that slip through", "1/yr"],
      ["F₀", "launches at which the exponent changes nothing", "1/yr"],
      ["c", "exponent: above 1 for an Allee effect", ""],
    ],
    sources: ["leung-2004"],
    computedBy: by("program/founding-chances.ts", "togetherOf"),
  },
  {
    title: "Rate of the boats without a program",
    words:
      "Two ways, weighed by how firm each is: from fouled launches, and from lakes like this one. It is in place of the first in every option.",
    formulas: [coded("exp(w ln a + (1−w) ln b)")],
    where: [
      ["a", "rate from fouled launches", "1/yr"],
      ["b", "rate from comparable lakes, without other ways in and without checks", "1/yr"],
      ["w", "weight of the first, inverse to its variance", ""],
    ],
    sources: ["project-judgement"],
    computedBy: by("risk/founding-rates.ts", "boatRates"),
  },
  {
    title: "Chance of establishment in a year",
    words:
      "From the foundings of boats and the other ways in, those that stations check and those that they do not.",
    formulas: [coded("h = 1 − exp(−(f μ + λ + λ′ F/F₀))")],
    where: [
      ["h", "chance in a year", ""],
      ["f", "factor: suitability, comparable lakes, clean years", ""],
      ["μ", "foundings by boats", "1/yr"],
      ["λ", "rate of other ways in that no check stops", "1/yr"],
      ["λ′", "rate of other ways in that stations check, without a program", "1/yr"],
      ["F", "fouled launches that slip through", "1/yr"],
      ["F₀", "those without a program", "1/yr"],
    ],
    sources: ["project-judgement"],
    computedBy: by("risk/hazard.ts", "yearlyHazard"),
  },
  {
    title: "Course of an infestation",
    words:
      "A clean lake may be infested in each year; what is established is noticed with a chance that grows with its age, at once where nothing else is said; what is noticed young may be contained, and the lake is clean and at risk again.",
    formulas: [
      coded("h(t) C(t−1)", "F"),
      coded("N(t,e) = N(t−1,e) + (1−s) p(a) U(t−1,e)"),
      coded("C(t) = (1−h(t)) C(t−1) + s Σ p(a) U(t−1,e)"),
    ],
    where: [
      ["F", "chance of establishment in year t", ""],
      ["C", "chance of being clean when a year ends", ""],
      ["h", "chance of establishment in a year, if the lake is clean", ""],
      ["U", "chance of an infestation established in year e that nobody knows of", ""],
      ["N", "chance of one that is known", ""],
      ["p", "chance to notice in its year a what was not noticed before", ""],
      ["t", "year", ""],
      ["e", "year of establishment", ""],
      ["a", "year of the infestation, t − e + 1", ""],
      ["s", "chance that containment succeeds, 0 where none is tried", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/state-probabilities.ts", "stateProbabilities"),
  },
  {
    title: "Chance to notice an infestation",
    words:
      "By the chances of finding mussels within one to four years at usual effort, scaled by the samples taken. The first harm that cannot be overlooked makes it certain.",
    formulas: [coded("p(a) = 1 − (1 − p₀(a))^e")],
    where: [
      ["p", "chance to notice in its year a what was not noticed before", ""],
      ["p₀", "the same at usual effort, from the chances within one to four years", ""],
      ["e", "effort: finds expected in the samples over those in the tows of a usual year", ""],
      ["a", "year of the infestation", ""],
    ],
    sources: ["first-finds", "tow-detection", "project-judgement"],
    computedBy: by("risk/detection.ts", "chanceBySamples"),
  },
  {
    title: "Mean time unnoticed",
    words: "Whole years that are expected to pass before the one in which mussels are noticed.",
    formulas: [coded("d = Σ (1 − Q(a))")],
    where: [
      ["d", "mean time unnoticed", "yr"],
      ["Q", "chance to have noticed by the end of the year a of an infestation", ""],
      ["a", "year of the infestation", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/detection.ts", "meanDelay"),
  },
  {
    title: "Attempts at containment",
    words:
      "Tried once, in the year in which mussels are noticed, if they are young enough; part of the cost of the infestation.",
    formulas: [coded("Q(t) = R A(t)")],
    where: [
      ["Q", "expected cost of containment in year t", "money"],
      ["R", "cost of one attempt", "money"],
      ["A", "expected number of attempts in year t: Σ p(a) U(t−1,e) over the ages at which it is tried", ""],
      ["t", "year", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("program/containment.ts", "containmentOf"),
  },
  {
    title: "Expected cost of a year",
    words:
      "The cost of each age of an infestation times the chance of that age: an exact sum, no sampling. While nobody knows of the mussels, only what is lost counts; what is done about them counts from the year in which they are noticed.",
    formulas: [coded("E(t) = Σ L(a) N(t,e) + Σ M(a) U(t,e)")],
    where: [
      ["E", "expected cost in year t, summed over e = 1 to t", "money"],
      ["L", "cost in the year a of an infestation that is noticed", "money"],
      ["M", "losses in the year a of one that is not", "money"],
      ["N", "chance of an infestation established in year e that is known", ""],
      ["U", "chance of one that nobody knows of", ""],
      ["t", "year", ""],
      ["e", "year of establishment", ""],
      ["a", "year of the infestation, t − e + 1", ""],
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
    formulas: [coded("u(a) = Σ v(t) N(t,t−a+1)")],
    where: [
      ["u", "weight of the year a since establishment, summed from t = a to the horizon", ""],
      ["a", "year since establishment", ""],
      ["v", "discount factor", ""],
      ["N", "chance of a noticed infestation of that age; U in its place for losses before that", ""],
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
];

export const moneyRelations: RelationGroup = { title: "Chance and money", relations: [...chance, ...worth] };
