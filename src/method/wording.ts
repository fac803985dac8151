import { glossary } from "../report/words/glossary.js";
import { likelihoods } from "../report/words/likelihood.js";
import { head, num, row, type TableView } from "../report/words/view-types.js";
import { farApart, judgedLimits, openChances } from "../study/traced/confidence.js";

/** How answers are put into words: the scale of likelihoods, the rule of confidence, and the terms. */
export interface WordingView {
  readonly likelihood: TableView;
  readonly confidence: readonly string[];
  readonly terms: TableView;
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

export const wordingView = (): WordingView => ({
  likelihood: {
    id: "table-likelihood",
    caption: "Likelihood words",
    head: head("Word", num("From"), num("To below")),
    rows: likelihoods.map(({ word, below }, index) =>
      row(word, num(percent(likelihoods[index - 1]?.below ?? 0)), num(percent(Math.min(1, below)))),
    ),
    note: "The number always stands beside the word.",
    compact: true,
  },
  confidence: confidenceRule,
  terms: {
    id: "table-terms",
    caption: "Terms",
    head: head("Term", "Meaning"),
    rows: glossary.map(({ term, meaning }) => row(term, meaning)),
    compact: true,
  },
});

const confidenceRule: readonly string[] = [
  `Evidence follows the share of what decides that is judged or from memory: the inputs of the bars, each weighed by the square of its bar's width, those that move together once. Up to ${percent(judgedLimits.high)} it is high, up to ${percent(judgedLimits.medium)} medium, above low. What is published, an operator's record, common practice or entered in the study is not judged.`,
  `Agreement is high where all comparisons come out alike, medium where one does not, low where more do not: the average and the case at central values, both accounts, fouled launches and comparable lakes (no more than ${farApart} times apart), and the two species of mussels.`,
  "Confidence is the lower of the two. It is at most medium where one input alone reverses the answer within its range, and low where that input is judged.",
  `Where no input alone reverses the answer, all comparisons agree, and the option pays in under ${percent(openChances.low)} or over ${percent(openChances.high)} of simulated outcomes, nothing within reason changes the answer, and confidence is high.`,
  "For the chance that mussels establish the bars are those of the chances and boats, and the only comparison is that of the two routes.",
];
