import type { BoardView } from "../../report/board/board.js";
import type { ReportContext } from "../../report/document/context.js";
import type { AccountBalance } from "../../report/document/headline.js";
import { both, isAbove, minus, number, over, plus, times, type Worked, whenOrWords } from "./formula.js";
import type { AnswerRow } from "./input-sheet.js";
import type { ProgramSheet } from "./program-sheet.js";
import { type Entry, type Formula, type SheetDraft, strong, text, value } from "./sheet.js";
import type { OptionCells } from "./yearly-sheet.js";

/** What the answer is made of. */
interface Linked {
  readonly options: readonly OptionCells[];
  readonly program: ProgramSheet;
  /** Where the lines of an infestation add up. */
  readonly infestationSum: Worked;
  readonly breakEven: Formula | undefined;
  readonly schedulePresentValue: Worked;
}

/** @param figures those of the first page, as links */
export function answerSheet(
  context: ReportContext,
  board: BoardView,
  { options, figures }: { readonly options: readonly OptionCells[]; readonly figures: readonly AnswerRow[] },
): SheetDraft {
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
      [text(asPrinted, "note")],
      [],
      ["Figures at central values, unrounded", ""].map((each) => text(each, "head")),
      ...figures.map(({ name, formula, look }) => [text(name), value(formula, look)]),
      [],
      ...headlineRows(context),
      ["Option, at central values", ...balanceHeads].map((each) => text(each, "head")),
      ...options.map((cells) => optionRow(cells, context, options)),
      [],
      ...printedRows(board),
      [text(standing, "note")],
    ],
  };
}

const asPrinted =
  "These words, the simulated outcomes and the figures as the first page prints them are computed by the program and stay as they are; figures at central values follow the inputs.";

const standing =
  "A planning estimate, not engineering advice. Inputs are on the sheet of that name, in yellow; gray numbers are computed by the program, and all others are formulas of the two.";

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

/** What the inputs come to for the requested option. */
export function answerRows(context: ReportContext, linked: Linked): AnswerRow[] {
  const { program, infestationSum } = linked;
  const { without, asked } = weighedCells(context.requested, linked);
  const { added, avoided } = differences(asked, without);
  const perYear = program.of(asked.result.option.id).program.all;
  const cents = (name: string, formula: Formula): AnswerRow => ({ name, formula, look: "cents" });
  const percent = (name: string, formula: Formula): AnswerRow => ({ name, formula, look: "percent" });
  return [
    cents("Program, per year", perYear),
    cents("Damage without it, expected per year", without.equalYearly.infestation),
    percent("Infested at the end, without it", without.chanceAtEnd),
    percent("Infested at the end, with it", asked.chanceAtEnd),
    cents("Infestation without it, present value, summed from its lines", infestationSum),
    cents("Net benefit, present value", minus(avoided, added)),
    ...(context.infestedSince === undefined ? breakEvenRows({ without, asked, perYear }, linked) : []),
  ];
}

/** Values at which the answer flips; the loss and the budget are ratios of present values. */
function breakEvenRows(
  { without, asked, perYear }: { without: OptionCells; asked: OptionCells; perYear: Worked },
  { breakEven, schedulePresentValue }: Linked,
): AnswerRow[] {
  const { added, avoided } = differences(asked, without);
  const own = minus(asked.presentValue.program, schedulePresentValue);
  const carried = minus(plus(avoided, without.presentValue.program), schedulePresentValue);
  const costsAndSaves = both(isAbove(added, number(0)), isAbove(avoided, number(0)));
  const saves = both(isAbove(avoided, number(0)), isAbove(times(own, perYear), number(0)));
  return [
    ...(breakEven
      ? [
          {
            name: "Break-even: lowest yearly chance without it",
            formula: breakEven,
            look: "percent",
          } as const,
        ]
      : []),
    {
      name: "Break-even: damage, times the estimate",
      formula: whenOrWords(costsAndSaves, over(added, avoided), "none"),
      look: "plain",
    },
    {
      name: "Break-even: yearly cost of the program",
      formula: whenOrWords(saves, over(times(carried, perYear), own), "none"),
      look: "cents",
    },
  ];
}

function weighedCells({ result }: ReportContext["requested"], { options }: Pick<Linked, "options">) {
  const [without] = options;
  const asked = options.find((each) => each.result === result);
  if (!without || !asked) throw new Error("the requested option has no columns");
  return { without, asked };
}

const differences = ({ presentValue }: OptionCells, without: OptionCells) => ({
  added: minus(presentValue.program, without.presentValue.program),
  avoided: minus(without.presentValue.infestation, presentValue.infestation),
});

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

function optionRow(
  cells: OptionCells,
  { comparison }: ReportContext,
  [without]: readonly OptionCells[],
): Entry[] {
  const { result, presentValue } = cells;
  const amounts = (["program", "infestation", "total"] as const).map((part) =>
    value(presentValue[part], "cents"),
  );
  const isBaseline = result === comparison.baseline;
  return [
    text(result.option.name),
    ...amounts,
    ...(without && !isBaseline ? balanceEntries(cells, without) : []),
  ];
}

/** A ratio over an added cost of under 1 a year would say nothing. */
function balanceEntries(cells: OptionCells, without: OptionCells): Entry[] {
  const { added, avoided } = differences(cells, without);
  const addedPerYear = minus(cells.equalYearly.program, without.equalYearly.program);
  return [
    value(added, "cents"),
    value(avoided, "cents"),
    value(minus(avoided, added), "cents"),
    value(whenOrWords(isAbove(addedPerYear, number(1)), over(avoided, added), "no added cost"), "plain"),
  ];
}
