/** A term of reports, pages and messages, with what it means and the words that it has replaced. */
export interface Term {
  readonly term: string;
  readonly meaning: string;
  /** None of these stands in a template or a text for it. */
  readonly replaced: readonly string[];
}

/** One word for one thing. */
export const glossary: readonly Term[] = [
  {
    term: "damage",
    meaning:
      "What mussels cost the structures: work, losses and protection, with the duties and policies entered.",
    replaced: ["infestation cost", "loss avoided", "losses avoided", "avoided loss"],
  },
  {
    term: "duty",
    meaning:
      "A yearly amount that staff entered and that comes with the mussels, such as monitoring or permits.",
    replaced: [],
  },
  {
    term: "policy of choice",
    meaning: "A yearly amount for what the authority is free to do, such as checks of leaving boats.",
    replaced: [],
  },
  {
    term: "other losses",
    meaning:
      "Recreation, property, curtailed deliveries and other waters, as entered by staff; in the second account alone.",
    replaced: ["as entered by the author", "the worth of houses"],
  },
  {
    term: "establish",
    meaning: "Mussels found a population that lasts.",
    replaced: ["come in to stay", "founds itself"],
  },
  {
    term: "ever infested",
    meaning: "Mussels establish at any time within the horizon, also where they are contained later.",
    replaced: [],
  },
  { term: "infested at the end", meaning: "Mussels are there when the horizon ends.", replaced: [] },
  {
    term: "detected",
    meaning: "Somebody knows of the mussels.",
    replaced: ["are noticed by", "gets noticed", "mussels are noticed", "to have noticed", "time unnoticed"],
  },
  {
    term: "option",
    meaning: "What is compared: no program, a program, or other levels of the lake.",
    replaced: [],
  },
  {
    term: "current program",
    meaning: "The option that the authority follows today.",
    replaced: ["the program in force:", "going on as now"],
  },
  {
    term: "efficient program",
    meaning: "One than which no other of the search costs less a year and leaves less chance of infestation.",
    replaced: [],
  },
  {
    term: "levels as operated",
    meaning: "The lake’s own levels, which other schedules of levels are held against.",
    replaced: [],
  },
  {
    term: "drawdown",
    meaning: "A fall of the lake below its levels as operated, for some days, with its refilling.",
    replaced: [],
  },
  {
    term: "exposed",
    meaning: "Out of the water part of the year.",
    replaced: ["hangs dry", "hang dry", "lays bare", "laid bare"],
  },
  {
    term: "break-even",
    meaning: "The value at which an option neither pays nor loses.",
    replaced: ["the answer turns", "it turns if", "where the answer turns"],
  },
  {
    term: "pays",
    meaning: "Saves more than it costs, in present value.",
    replaced: ["is worth its cost", "not worth its cost", "worth its money"],
  },
  {
    term: "on average",
    meaning: "By expectation over all that is uncertain.",
    replaced: ["luck averaged out", "on average over luck"],
  },
  {
    term: "central values",
    meaning: "Every assumption and entry at its likeliest value.",
    replaced: [],
  },
  {
    term: "simulated outcome",
    meaning:
      "One set of values from the ranges and one course of chance: whether and when mussels establish.",
    replaced: ["of 10 futures", "possible futures", "odds are no promise", "comes out cheaper"],
  },
  {
    term: "assumption set",
    meaning: "One set of values from the ranges, with chance averaged out.",
    replaced: ["sets of assumptions it is worth"],
  },
  {
    term: "likelihood",
    meaning: "A chance in a word of the stated scale, with its number.",
    replaced: ["the odds: in"],
  },
  {
    term: "confidence",
    meaning: "How firm a finding is, by evidence and agreement.",
    replaced: [],
  },
  { term: "evidence", meaning: "How much of what decides is published, counted or entered.", replaced: [] },
  { term: "agreement", meaning: "Whether a finding comes out alike by each way to it.", replaced: [] },
  {
    term: "10th percentile",
    meaning: "1 in 10 simulated outcomes is below; other percentiles likewise.",
    replaced: ["of 10 cost less than", "half of the futures", "p10 and p90", "p10–p90"],
  },
  {
    term: "annual budget sufficient in 8 of 10 outcomes",
    meaning: "The equal yearly amount whose present value covers what happens in that share.",
    replaced: ["yearly amount enough"],
  },
  {
    term: "average cost of choosing wrongly",
    meaning: "What an option costs on average above the best choice for each assumption set.",
    replaced: ["regret, on average"],
  },
  {
    term: "simulation error",
    meaning: "What more simulated outcomes would narrow.",
    replaced: ["limits of the drawing"],
  },
  {
    term: "probability-weighted, annual equivalent",
    meaning: "The equal yearly amount with the same expected present value.",
    replaced: ["weighed by its chance, spread evenly"],
  },
  {
    term: "limiting factor",
    meaning: "The measured variable that suits mussels least.",
    replaced: ["calcium rules", "the lowest rules"],
  },
  {
    term: "held for full inspection",
    meaning: "Kept back by the quick check or the owner's own declaration.",
    replaced: ["boats set aside", "set-aside boats"],
  },
  {
    term: "who pays",
    meaning: "The fund or the group that carries an amount.",
    replaced: ["who bears it", "the bearers", "program's bearer"],
  },
  {
    term: "share if split by benefit",
    meaning: "Added cost in proportion to damage avoided.",
    replaced: ["would pay in proportion"],
  },
  { term: "fouled", meaning: "Of a boat: with mussels on it, dead or alive.", replaced: [] },
  {
    term: "layer",
    meaning: "Of a pipe, a rack or a dock: mussels on its wetted surface.",
    replaced: [],
  },
  {
    term: "per year, once established",
    meaning: "In a year with a full population.",
    replaced: ["a year, mature"],
  },
  { term: "judged", meaning: "Somebody's estimate, for want of a published value.", replaced: [] },
  {
    term: "class 5 estimate",
    meaning: "A screening estimate as AACE 18R-97 has it.",
    replaced: ["in the sense of aace"],
  },
];
