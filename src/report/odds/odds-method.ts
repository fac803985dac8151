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
    `Each assumption is drawn between its low and its high by a beta-PERT distribution with its value as the likeliest, unless appendix ${appendixLetter("assumptions")} names another; the low and the high of a normal or lognormal one are its P10 and P90. Quantities that the study gives with a range are drawn as it says; shares of boats found fouled by the belief that the counts leave. Rates of interest, limits of checks and whatever has one value are not drawn.`,
    "Luck: in each future mussels establish in a year drawn by that future's yearly chances, or not within the horizon. Where “luck averaged out” is said, the exact expectation takes the place of the draw.",
    endText(odds, context),
    "Quantiles are of type 7 (Hyndman and Fan). Their limits are Woodruff's of 1952: the quantiles at the share plus and minus its error. Errors are reckoned from one block of draws to the next, since each block is a sample of its own, and limits by Student's t with one degree of freedom less than there are blocks. Limits and standard errors say how well the drawing knows a figure, not how right the assumptions are.",
    "Regret is what an option costs on average more than the option that is best for each set of assumptions. The value of knowing an input is how much less would be spent on average, if the option were chosen after it is known; that of knowing everything but luck is the most that any study or measurement can be worth. Bars are worked out for the inputs that come first by rank correlation.",
  ];
}

export const notInOdds = [
  "how plans are chosen: in each draw, for a mature infestation and with that draw's values known",
  "the form of the model itself: every future follows the same relations (the method document has them)",
  "the order of wet and dry years: in each future one year of a record, if there is one, repeats",
  "what the estimate leaves out altogether",
];

const samplings: Record<Odds["settings"]["sampling"], string> = {
  "latin-hypercube":
    "by Latin hypercube: within a block each input's range is cut into as many parts of equal chance as there are draws, and each part is drawn from once; chances and luck of the few futures of one lake are spread evenly, too",
  sobol: "by a scrambled Sobol sequence, whose points fill the ranges evenly",
};

function drawnText({ futures, lakes, blocks, inputs, settings }: Odds): string {
  return `${count(futures)} futures were drawn: the lake and its structures ${count(lakes)} times, in ${blocks} blocks, each with ${significant(futures / lakes, 4)} sets of boats, chances and luck; ${inputs} inputs in all. They are drawn ${samplings[settings.sampling]}. Seed ${settings.seed}: the same seed gives the same figures.`;
}

function endText(odds: Odds, { format }: ReportContext): string {
  const { name, against } = requestedOdds(odds);
  const { value, standardError } = against.netBenefit;
  const known = `the mean net benefit of “${name}” is ${format.money(value)} with a standard error of ${format.money(standardError)}`;
  return odds.end === "precise"
    ? `Drawing ended when it was precise enough: ${known}.`
    : `Drawing ended at the most futures allowed, before it was as precise as asked: ${known}. More futures would narrow the limits.`;
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
    note: "Spearman's rank correlation of any two of a group. All other inputs are drawn independently.",
    compact: true,
  };
}
