import { sumOf } from "../../lists.js";
import type { FoundAmount, FoundOdds } from "../../study/odds/odds.js";
import type { TracedFound, TracedPhase } from "../../study/traced/traced-found.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { head, num, row, subtotalRow, type TableView } from "../words/view-types.js";
import { phaseNames } from "./phase-names.js";

const ways = ["without", "withIt"] as const;
type Way = (typeof ways)[number];

/** What each phase is expected to cost: what the comparison has, and what is told beside it. */
export function expectedTable({ phases }: TracedFound, context: ReportContext): TableView {
  const { horizon, foundOdds } = context;
  const cells = amountCells(context);
  const indexed = phases.map((each, index) => ({ ...each, index }));
  const rowsOf = (isCounted: boolean) =>
    indexed
      .filter((each) => each.isCounted === isCounted)
      .map(({ phase, expected, index }) =>
        row(phaseNames[phase.phase], ...cells(expected, ({ phases: drawn }) => drawn[index])),
      );
  const all = cells(sumOfPhases(phases), (odds) => odds.all);
  const part = (isCounted: boolean, name: string, drawn: (odds: FoundOdds) => FoundAmount) => {
    const rows = rowsOf(isCounted);
    const sum = sumOfPhases(phases.filter((each) => each.isCounted === isCounted));
    return rows.length === 0 ? [] : [...rows, subtotalRow(name, ...cells(sum, drawn))];
  };
  return {
    id: "table-found-expected",
    caption: `Expected cost by phase over ${horizon} years, in present value`,
    head: head("Phase", ...wayHeads(context)),
    rows: [
      ...part(true, "In the comparison already", (odds) => odds.counted),
      ...part(false, "Outside the comparison", (odds) => odds.beside),
    ],
    total: row("All phases", ...all),
    note: `Costs outside the comparison are in no other figure; false alarms are not counted.${foundOdds ? " By the odds: the mean and the range of four in five outcomes." : ""}`,
    compact: true,
  };
}

const sumOfPhases = (phases: readonly TracedPhase[]): TracedPhase["expected"] => ({
  without: sumOf(phases.map(({ expected }) => expected.without)),
  withIt: sumOf(phases.map(({ expected }) => expected.withIt)),
});

/** At central values and by the odds, without a program and with it. */
const amountCells =
  ({ format, foundOdds }: ReportContext) =>
  (central: TracedPhase["expected"], pick: (odds: FoundOdds) => FoundAmount | undefined) =>
    ways.flatMap((way) => {
      const drawn = foundOdds && pick(foundOdds[way]);
      const amount = num(format.money(central[way]));
      if (!drawn) return [amount];
      const { mean, low, high } = drawn;
      return [amount, num(`${format.money(mean.value)} (${format.money(low)} to ${format.money(high)})`)];
    });

const wayHeads = ({ foundOdds }: ReportContext) =>
  foundOdds
    ? [
        num("Without a program: central"),
        num("by the odds (80%)"),
        num("With it: central"),
        num("by the odds (80%)"),
      ]
    : [num("Without a program"), num("With it")];

/** How often what happens, without a program and with it. */
export function courseTable({ course }: TracedFound, context: ReportContext): TableView {
  const { horizon, requested, foundOdds } = context;
  const times = (pick: (each: TracedFound["course"][Way]) => number) =>
    ways.flatMap((way) => [
      num(significant(pick(course[way]), 2)),
      ...(foundOdds ? [num(significant(pick(foundOdds[way].times), 2))] : []),
    ]);
  return {
    id: "table-found-course",
    caption: `Times expected in ${horizon} years, with “${requested.result.option.name}” and without a program`,
    head: foundOdds
      ? head("", num("Without: central"), num("by the odds"), num("With it: central"), num("by the odds"))
      : head("", num("Without a program"), num("With it")),
    rows: [
      row("Mussels are found", ...times(({ found }) => found)),
      ...(ways.some((way) => course[way].tried > 0)
        ? [
            row("Early enough for an attempt", ...times(({ tried }) => tried)),
            row("Eradicated", ...times(({ contained }) => contained)),
            row("They return after that", ...times(({ returned }) => returned)),
          ]
        : []),
      row(
        "Found too late or not eradicated: they stay",
        ...times(({ found, contained }) => found - contained),
      ),
    ],
    ...(foundOdds
      ? {
          note: `In simulated outcomes mussels are ever found in ${percent(foundOdds.without.isFound.value)} without a program and in ${percent(foundOdds.withIt.isFound.value)} with it.`,
        }
      : {}),
    compact: true,
  };
}
