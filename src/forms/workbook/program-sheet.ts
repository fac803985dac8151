import { at } from "../../lists.js";
import type { CostLine } from "../../model/money/line.js";
import type { PriceGroup } from "../../model/money/price-group.js";
import type { OptionResult } from "../../model/option.js";
import { allOptions, type ReportContext } from "../../report/document/context.js";
import { capitalised, lineDimensions } from "../../report/words/format.js";
import { groupNames } from "../../report/words/line-groups.js";
import { amountOf, minus, number, plus, sum, sumOfKey, times, type Worked } from "./formula.js";
import { type Grid, grid } from "./grid.js";
import type { InputList } from "./input-sheet.js";
import { groupWords } from "./money-inputs.js";
import type { LineInputs, ProgramInputs } from "./program-inputs.js";
import { rateUnit } from "./rate-inputs.js";
import { type Entry, type SheetDraft, strong, text, value } from "./sheet.js";

/** Yearly cost of lines, all together and those of a group whose prices rise otherwise. */
export interface YearlySum {
  readonly all: Worked;
  readonly rising: (group: PriceGroup) => Worked;
}

export interface ProgramCells {
  readonly program: YearlySum;
  /** What it costs to follow the option's schedule of levels once mussels are known; absent without lines. */
  readonly schedule: YearlySum | undefined;
  /** Amounts of the program's lines, in their order. */
  readonly amounts: readonly Worked[];
}

export interface ProgramSheet {
  readonly draft: SheetDraft;
  readonly of: (optionId: string) => ProgramCells;
}

const name = "Program lines";
const heads = ["Option", "Group", "Line", "Who pays", "Quantity", "Unit", "Unit rate", "Amount", "Rises as"];
const quantityColumn = 4;
const rateColumn = 6;
const amountColumn = 7;
const keyColumn = 8;
const headRow = 3;

interface Parts {
  readonly programs: ReadonlyMap<string, ProgramInputs>;
  readonly inputs: InputList;
  /** The unit rate of a cost of a structure, where its damage has the same. */
  readonly rateOf: (line: CostLine) => Worked | undefined;
}

/** What each option pays and takes in a year while it runs in full in a clean lake, and what its schedule costs. */
export function programSheet(context: ReportContext, parts: Parts): ProgramSheet {
  const sheet = grid(name);
  sheet.put(0, 0, text("What each option costs in a year", "title"));
  sheet.put(1, 0, text(introduction(context), "note"));
  sheet.putRow(
    headRow,
    heads.map((each) => text(each, "head")),
  );
  const cells = new Map(
    allOptions(context).map((result) => [result.option.id, writeOption(sheet, result, context, parts)]),
  );
  return {
    draft: sheet.draft({ widths: [34, 20, 44, 28, 14, 12, 14, 16, 18], headRows: headRow + 1 }),
    of: (optionId) => {
      const found = cells.get(optionId);
      if (!found) throw new Error(`no program lines of ${optionId}`);
      return found;
    },
  };
}

function writeOption(
  sheet: Grid,
  result: OptionResult,
  context: ReportContext,
  { programs, inputs, rateOf }: Parts,
): ProgramCells {
  const { option, programLines, schedule } = result;
  const drafts = programs.get(option.id)?.lines ?? [];
  const first = sheet.height();
  const amounts = programLines.map((line, index) =>
    writeLine(sheet, context, {
      ...{ option: option.name, group: groupNames[line.group], line, unit: line.unit },
      name: option.equipment[index] ? `${option.equipment[index].name}, yearly over its life` : line.what,
      inputs: at(drafts, index),
    }),
  );
  const program = writeSum(sheet, option.name, "Together", first);
  if (schedule.operating.length === 0) return { program, amounts, schedule: undefined };
  inputs.section(`“${option.name}”: what following its schedule costs`);
  const firstOfSchedule = sheet.height();
  for (const line of schedule.operating) {
    const dimension = lineDimensions[line.quantityKind];
    const rate =
      rateOf(line) ??
      inputs.addShared({
        ...{ name: `${capitalised(line.what)}: unit rate`, look: "exact", unit: rateUnit(line, context) },
        amount: context.format.display(line.unitRate, dimension.rate),
      });
    const quantity = context.format.display(line.quantity, dimension.quantity);
    writeLine(sheet, context, {
      ...{ option: option.name, group: schedule.name, line, unit: undefined, name: line.what },
      inputs: { quantity, rate },
    });
  }
  return {
    program,
    amounts,
    schedule: writeSum(sheet, option.name, "Following its schedule, together", firstOfSchedule),
  };
}

interface Line {
  readonly option: string;
  readonly group: string;
  readonly line: CostLine;
  readonly unit: string | undefined;
  readonly name: string;
  readonly inputs: Pick<LineInputs, "rate"> & { readonly quantity: Worked | number };
}

function writeLine(
  sheet: Grid,
  context: ReportContext,
  { option, group, line, unit, name, inputs }: Line,
): Worked {
  const row = sheet.height();
  const { quantity: dimension, unit: named } = lineDimensions[line.quantityKind];
  sheet.putRow(row, [
    text(option),
    text(group),
    text(capitalised(name)),
    text(context.bearerName(line.bearer)),
  ]);
  const quantity = sheet.put(row, quantityColumn, value(inputs.quantity, "plain"));
  sheet.put(row, quantityColumn + 1, text(unit ?? named ?? context.format.unit(dimension)));
  const rate = sheet.put(row, rateColumn, value(inputs.rate, "plain"));
  sheet.put(row, keyColumn, text(risesAs(line, context)));
  return sheet.put(row, amountColumn, value(amountOf(times(quantity, rate), line.cents), "cents"));
}

const risesAs = (line: CostLine, { traced }: ReportContext) => {
  const group = traced.rising(line);
  return group === undefined ? "" : groupWords[group];
};

function writeSum(sheet: Grid, option: string, label: string, first: number): YearlySum {
  const row = sheet.height();
  const last = row - 1;
  const isEmpty = last < first;
  const cells: Entry[] = [text(option), text(""), text(label)];
  sheet.putRow(row, cells.map(strong));
  const amounts = isEmpty ? [] : [sheet.down(amountColumn, first, last)];
  const all = sheet.put(row, amountColumn, strong(value(sum(...amounts), "cents")));
  return {
    all,
    rising: (group) =>
      isEmpty
        ? number(0)
        : sumOfKey(
            sheet.keys(keyColumn, first, last),
            groupWords[group],
            sheet.down(amountColumn, first, last),
          ),
  };
}

const introduction = ({ run, priceYear }: ReportContext) =>
  `${run.document.money.currency} of ${priceYear}, while the lake stays clean and programs run in full. Equipment at its yearly capital recovery; fees and other revenue are negative. Amount = quantity × unit rate, rounded to the cent; both follow from the inputs.`;

/** A sum in a year of the horizon, with the rises of its prices. */
export const inYear = (
  { all, rising }: YearlySum,
  groups: readonly PriceGroup[],
  riseOf: (group: PriceGroup) => Worked,
): Worked =>
  groups.reduce<Worked>(
    (total, group) => plus(total, times(rising(group), minus(riseOf(group), number(1)))),
    all,
  );
