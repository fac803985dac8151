import { by, coded, type Relation } from "./relation.js";

/** From boats to the expected cost of a year. */
export const chanceRelations: readonly Relation[] = [
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
    title: "Fouled boats held for full inspection",
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
      "Fouled boats that are sealed, not met or not held, and of those held the ones that are neither refused nor made safe; a drying hold leaves part of what was missed alive.",
    formulas: [coded("x = 1 − a + a (1−r) m u"), coded("a = (1−s) c b")],
    where: [
      ["x", "share of fouled boats that reach the water", ""],
      ["a", "share met and held for full inspection", ""],
      ["b", "share of the boats met that is held", ""],
      ["s", "share with a seal", ""],
      ["c", "launches in open hours over all launches", ""],
      ["r", "share of the boats held that is refused", ""],
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
      "A clean lake may be infested in each year; an established population is detected with a chance that grows with its age, at once where nothing else is said; what is detected young may be contained, and the lake is clean and at risk again.",
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
      ["p", "chance of detecting in its year a what was not detected before", ""],
      ["t", "year", ""],
      ["e", "year of establishment", ""],
      ["a", "year of the infestation, t − e + 1", ""],
      ["s", "chance that containment succeeds, 0 where none is tried", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/state-probabilities.ts", "stateProbabilities"),
  },
  {
    title: "Chance of detecting an infestation",
    words:
      "By the chances of finding mussels within one to four years at usual effort, scaled by the samples taken. The first harm that cannot be overlooked makes it certain.",
    formulas: [coded("p(a) = 1 − (1 − p₀(a))^e")],
    where: [
      ["p", "chance of detecting in its year a what was not detected before", ""],
      ["p₀", "the same at usual effort, from the chances within one to four years", ""],
      ["e", "effort: finds expected in the samples over those in the tows of a usual year", ""],
      ["a", "year of the infestation", ""],
    ],
    sources: ["first-finds", "tow-detection", "project-judgement"],
    computedBy: by("risk/detection.ts", "chanceBySamples"),
  },
  {
    title: "Mean time undetected",
    words: "Whole years that are expected to pass before the one in which mussels are detected.",
    formulas: [coded("d = Σ (1 − Q(a))")],
    where: [
      ["d", "mean time undetected", "yr"],
      ["Q", "chance of having detected it by the end of the year a of an infestation", ""],
      ["a", "year of the infestation", ""],
    ],
    sources: ["trade-practice"],
    computedBy: by("risk/detection.ts", "meanDelay"),
  },
  {
    title: "Attempts at containment",
    words:
      "Tried once, in the year in which mussels are detected, if they are young enough; part of the cost of the infestation.",
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
      "The cost of each age of an infestation times the chance of that age: an exact sum, no sampling. While nobody knows of the mussels, only what is lost counts; what is done about them counts from the year in which they are detected.",
    formulas: [coded("E(t) = Σ L(a) N(t,e) + Σ M(a) U(t,e)")],
    where: [
      ["E", "expected cost in year t, summed over e = 1 to t", "money"],
      ["L", "cost in the year a of an infestation that is detected", "money"],
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
