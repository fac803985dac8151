import { counted } from "../../counted.js";
import type { OptionBalance } from "../../model/compare.js";
import type { BoardView } from "../../report/board/board.js";
import type { ReportContext } from "../../report/document/context.js";
import type { AccountBalance } from "../../report/document/headline.js";
import { hasRatio } from "../../report/words/balance-signs.js";
import type { ProgramSheet } from "./program-sheet.js";
import { type Entry, type Look, type SheetDraft, strong, text, value } from "./sheet.js";
import type { OptionCells, YearlySheet } from "./yearly-sheet.js";

/** The answer, with every amount linked to the sheet that it comes from. */
interface Linked {
  readonly yearly: YearlySheet;
  readonly program: ProgramSheet;
  /** Where the lines of an infestation add up. */
  readonly infestationSum: string;
}

export function answerSheet(context: ReportContext, board: BoardView, linked: Linked): SheetDraft {
  const { study } = context.run.document;
  return {
    name: "The answer",
    widths: [56, 20, 20, 20, 20, 20, 20, 20],
    headRows: 0,
    joined: [2, 3, 4].map((row) => ({ row, from: 0, to: balanceHeads.length })),
    rows: [
      [text(study.name, "title")],
      [text(`${study.authority}, prepared ${study.prepared} by ${study.preparedBy}`, "note")],
      [text(board.question, "paragraph")],
      [strong(text(board.answer, "paragraph"))],
      [text(board.certainty ?? "", "paragraph")],
      [],
      ...figureRows(context, linked),
      [],
      ...headlineRows(context),
      ["Option, at central values", ...balanceHeads].map((each) => text(each, "head")),
      ...linked.yearly.options.map((cells) => optionRow(cells, context, linked)),
      [],
      ...printedRows(board),
      [text(standing, "note")],
    ],
  };
}

const standing =
  "A planning estimate, not engineering advice. Cells with formulas can be followed; values without one come from the model: chances, expected costs of each year, quantities, rates and weights.";

/** Figures of a first page that has them beside its answer. */
function printedRows({ figures }: BoardView): Entry[][] {
  if (figures.length === 0) return [];
  return [
    [text("As the first page prints it", "head"), text("", "head"), text("", "head")],
    ...figures.map(({ label, value: printed, note }) => [text(label), text(printed), text(note, "note")]),
    [],
  ];
}

const balanceHeads = [
  "Present value, program",
  "Present value, infestation",
  "Together",
  "Added cost",
  "Damage avoided",
  "Net benefit",
  "Benefit–cost ratio",
];

/** The figures of the first page, unrounded. */
function figureRows(context: ReportContext, { yearly, program, infestationSum }: Linked): Entry[][] {
  const { requested, comparison, horizon } = context;
  const cellsOf = (id: string) => yearly.options.find(({ result }) => result.option.id === id);
  const [without, asked] = [comparison.baseline, requested.result].map(({ option }) => cellsOf(option.id));
  if (!without || !asked) throw new Error("the requested option has no columns");
  const figure = (label: string, formula: string, result: number, look: Look = "cents") => [
    text(label),
    value({ formula, result }, look),
  ];
  const { hazard } = requested.breakEven;
  return [
    [text("Figures at central values, unrounded", "head"), text("", "head")],
    figure(
      "Program, per year",
      program.sums.get(requested.result.option.id) ?? "0",
      requested.result.programPerYear.toNumber(),
    ),
    figure(
      "Damage without it, expected per year",
      without.equalYearly.infestation,
      comparison.baseline.equivalentYearly.infestation.toNumber(),
    ),
    figure(
      `Infested after ${counted(horizon, "year")}, without it`,
      without.chanceAtEnd,
      chance(without),
      "percent",
    ),
    figure(
      `Infested after ${counted(horizon, "year")}, with it`,
      asked.chanceAtEnd,
      chance(asked),
      "percent",
    ),
    ...(hazard === undefined
      ? []
      : [[text("Break-even yearly chance (found by search)"), value(hazard, "percent")]]),
    figure(
      "Infestation without it, present value, summed from its lines",
      infestationSum,
      comparison.baseline.presentValue.infestation.toNumber(),
    ),
  ];
}

const headlineHeads = [
  "Option, on average over all that is uncertain",
  "Mussels establish",
  "Infested at the end",
  "Net benefit",
  "10th percentile of net benefits",
  "90th percentile of net benefits",
  "Chance that it pays",
  "Benefit–cost ratio",
];

/** The answer by the odds; no rows where none were drawn. */
function headlineRows({ headline }: ReportContext): Entry[][] {
  if (!headline) return [];
  const rows = headline.options.flatMap(({ name, everInfested, infestedAtEnd, balance }) => {
    const chances = [value(everInfested, "percent"), value(infestedAtEnd, "percent")];
    const withOther = balance?.withOther;
    return [
      [text(name), ...chances, ...(balance ? balanceOnAverage(balance) : [])],
      ...(withOther
        ? [[text(`${name}, with the other losses entered`), ...chances, ...balanceOnAverage(withOther)]]
        : []),
    ];
  });
  return [headlineHeads.map((each) => text(each, "head")), ...rows, []];
}

const balanceOnAverage = (balance: AccountBalance): Entry[] => [
  value(balance.netBenefit, "cents"),
  value(balance.low, "cents"),
  value(balance.high, "cents"),
  value(balance.paysForItself, "percent"),
  balance.benefitCostRatio === undefined ? text("no added cost") : value(balance.benefitCostRatio, "plain"),
];

const chance = ({ result }: OptionCells) => result.infestedByYear.at(-1) ?? 0;

function optionRow(cells: OptionCells, { comparison }: ReportContext, { yearly }: Linked): Entry[] {
  const { result, presentValue } = cells;
  const amounts = (["program", "infestation", "total"] as const).map((part) =>
    value({ formula: presentValue[part], result: result.presentValue[part].toNumber() }, "cents"),
  );
  const balance = comparison.options.find((each) => each.result === result);
  const baseline = yearly.options.find((each) => each.result === comparison.baseline);
  return [
    text(result.option.name),
    ...amounts,
    ...(balance && baseline ? balanceEntries(balance, cells, baseline) : []),
  ];
}

function balanceEntries(
  balance: OptionBalance,
  { presentValue }: OptionCells,
  baseline: OptionCells,
): Entry[] {
  const { addedProgramCost, avoidedLoss, netBenefit } = balance;
  const added = `${presentValue.program}-${baseline.presentValue.program}`;
  const avoided = `${baseline.presentValue.infestation}-${presentValue.infestation}`;
  return [
    value({ formula: added, result: addedProgramCost.toNumber() }, "cents"),
    value({ formula: avoided, result: avoidedLoss.toNumber() }, "cents"),
    value({ formula: `(${avoided})-(${added})`, result: netBenefit.toNumber() }, "cents"),
    hasRatio(balance)
      ? value({ formula: `(${avoided})/(${added})`, result: balance.benefitCostRatio }, "plain")
      : text("no added cost"),
  ];
}
