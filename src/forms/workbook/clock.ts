import type { PriceGroup } from "../../model/money/price-group.js";
import type { ReportContext } from "../../report/document/context.js";
import { isAbove, minus, number, over, plus, power, type Stretch, type Worked, when } from "./formula.js";
import type { Grid } from "./grid.js";
import type { MoneyInputs } from "./money-inputs.js";
import { groupWords } from "./money-inputs.js";
import { text, value } from "./sheet.js";

/** Years of the horizon down a sheet, with discount factors and rises of prices; years are counted from 0. */
export interface Clock {
  readonly years: number;
  readonly year: (index: number) => Worked;
  readonly number: (index: number) => Worked;
  readonly factor: (index: number) => Worked;
  readonly rise: (group: PriceGroup | undefined, index: number) => Worked;
  readonly numbers: Stretch;
  readonly factors: (first?: number, last?: number) => Stretch;
  /** Nothing for a group whose price goes with prices in general. */
  readonly rises: (group: PriceGroup | undefined, first?: number, last?: number) => Stretch[];
  /** Columns that it takes. */
  readonly columns: number;
}

const columns = { year: 0, number: 1, factor: 2, rises: 3 };

/** Writes them down a sheet. @param headRow row of their heads; the years follow */
export function writeClock(sheet: Grid, headRow: number, context: ReportContext, money: MoneyInputs): Clock {
  const groups = [...money.rises.keys()];
  const first = headRow + 1;
  const { horizon: years } = context;
  sheet.putRow(
    headRow,
    ["Year", "Number", "Discount factor", ...groups.map((group) => `Price of ${groupWords[group]}`)].map(
      (each) => text(each, "head"),
    ),
  );
  for (let index = 0; index < years; index++) writeYear(sheet, first + index, index, money);
  const stretch = (column: number, from = 0, to = years - 1) => sheet.down(column, first + from, first + to);
  const columnOf = (group: PriceGroup | undefined) =>
    group === undefined || !groups.includes(group) ? undefined : columns.rises + groups.indexOf(group);
  return {
    years,
    year: (index) => sheet.at(first + index, columns.year),
    number: (index) => sheet.at(first + index, columns.number),
    factor: (index) => sheet.at(first + index, columns.factor),
    rise: (group, index) => {
      const column = columnOf(group);
      return column === undefined ? number(1) : sheet.at(first + index, column);
    },
    numbers: stretch(columns.number),
    factors: (from, to) => stretch(columns.factor, from, to),
    rises: (group, from, to) => {
      const column = columnOf(group);
      return column === undefined ? [] : [stretch(column, from, to)];
    },
    columns: columns.rises + groups.length,
  };
}

function writeYear(sheet: Grid, row: number, index: number, money: MoneyInputs): void {
  const { rate, before, horizon, startYear, priceYear, rises } = money;
  const year = sheet.put(
    row,
    columns.year,
    value(index === 0 ? startYear : plus(sheet.at(row - 1, columns.year), number(1)), "whole"),
  );
  const place = sheet.put(row, columns.number, value(plus(minus(year, startYear), number(1)), "whole"));
  const discounted = over(number(1), power(plus(number(1), rate), minus(place, before)));
  sheet.put(row, columns.factor, value(when(isAbove(place, horizon), number(0), discounted), "factor"));
  const sincePrices = minus(plus(minus(year, priceYear), number(1 / 2)), before);
  [...rises.values()].forEach((rise, group) => {
    sheet.put(row, columns.rises + group, value(power(plus(number(1), rise), sincePrices), "factor"));
  });
}
