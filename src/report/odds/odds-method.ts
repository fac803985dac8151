import { appendixLetter } from "../../study/format/report-schema.js";
import type { Odds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { requestedOdds } from "./odds-words.js";

const count = (value: number) => value.toLocaleString("en-US");

/** How the odds came about, for those who check them. */
export function oddsMethod(odds: Odds, context: ReportContext): string[] {
  return [
    drawnText(odds),
    `Each assumption varies between its low and its high by a beta-PERT distribution with its value as the likeliest, unless appendix ${appendixLetter("assumptions")} names another; the low and the high of a normal or lognormal one are its 10th and 90th percentiles. Quantities that the study gives with a range vary as it says; those typed as one number by a beta-PERT distribution around it whose ends follow from what they are (assumptions “typed”): ± a share of the value; for shares and chances ± log odds; for temperatures ± kelvins. Months of a list are off together, and so is one quantity of several options. Limits, levels, fees, dates, shares of a whole and what the study calls exact do not vary; shares of boats found fouled vary by the belief that the counts leave. Rates of interest, limits of checks and whatever has one value do not vary.`,
    "Chance: in each simulated outcome mussels establish in a year picked by that outcome's yearly chances, or not within the horizon. Where an option “pays on average”, the exact expectation takes the place of that year.",
    endText(odds, context),
    "Quantiles are of type 7 (Hyndman and Fan). Their limits are Woodruff's of 1952: the quantiles at the share plus and minus its error. Errors are reckoned from one block of draws to the next, since each block is a sample of its own, and limits by Student's t with one degree of freedom less than there are blocks. Limits and standard errors say how well the simulation knows a figure, not how right the assumptions are.",
    "The cost of choosing wrongly is what an option costs on average more than the option that is best for each set of assumptions. The value of knowing an input is how much less would be spent on average, if the option were chosen after it is known; that of knowing everything but chance is the most that any study or measurement can be worth. Bars are worked out for the inputs that come first by rank correlation.",
  ];
}

export const notInOdds = [
  "how plans are chosen: in each simulated outcome, once established and with that outcome's values known",
  "the form of the model itself: every simulated outcome follows the same relations (the method document has them)",
  "the order of wet and dry years: in each simulated outcome one year of a record, if there is one, repeats",
  "what the estimate leaves out altogether",
];

const samplings: Record<Odds["settings"]["sampling"], string> = {
  "latin-hypercube":
    "by Latin hypercube: within a block each input's range is cut into as many parts of equal chance as there are sets, and each part is used once; the courses of chance of the few outcomes of one lake are spread evenly, too",
  sobol: "by a scrambled Sobol sequence, whose points fill the ranges evenly",
};

function drawnText({ futures, lakes, blocks, inputs, settings }: Odds): string {
  return `${count(futures)} outcomes were simulated: the lake and its structures ${count(lakes)} times, in ${blocks} blocks, each with ${significant(futures / lakes, 4)} sets of boats and courses of chance; ${inputs} inputs in all. Their values are picked ${samplings[settings.sampling]}. Seed ${settings.seed}: the same seed gives the same figures.`;
}

function endText(odds: Odds, { format }: ReportContext): string {
  const { name, against } = requestedOdds(odds);
  const { value, standardError } = against.netBenefit;
  const known = `the mean net benefit of “${name}” is ${format.money(value)} with a standard error of ${format.money(standardError)}`;
  return odds.end === "precise"
    ? `The simulation ended when it was precise enough: ${known}.`
    : `The simulation ended at the most outcomes allowed, before it was as precise as asked: ${known}. More outcomes would narrow the limits.`;
}

/** Assumptions that are drawn together. */
export function groupsTable({ run }: ReportContext): TableView {
  const used = new Set(run.usedAssumptions);
  return {
    id: "table-drawn-together",
    caption: "Assumptions that move together",
    head: head("Group", num("Used here"), num("Rank correlation"), "Basis", "Source and note"),
    rows: run.assumptions.groups.map(({ name, members, rankCorrelation, basis, source, note }) =>
      row(
        name,
        num(`${members.filter((id) => used.has(id)).length} of ${members.length}`),
        num(String(rankCorrelation)),
        basis,
        [`[${source}]`, note].filter(Boolean).join(" "),
      ),
    ),
    note: "Spearman's rank correlation of any two of a group. All other inputs vary independently.",
    compact: true,
  };
}
