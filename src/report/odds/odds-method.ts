import { appendixLetter } from "../../study/format/report-schema.js";
import type { Odds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { requestedOdds } from "./odds-words.js";

const count = (value: number) => value.toLocaleString("en-US");

/** How the odds came about, for those who check them; the method document has what is the same for every study. */
export const oddsMethod = (odds: Odds, context: ReportContext): string[] => [
  drawnText(odds),
  `Each assumption varies within its range (appendix ${appendixLetter("assumptions")}), and each entry of the study as it says or by what it is. How values are picked, what is not in the odds and how errors are reckoned is in the method document.`,
  endText(odds, context),
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
    : `The simulation stopped at the most outcomes allowed, before it was as precise as asked: ${known}. More outcomes would narrow the limits.`;
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
