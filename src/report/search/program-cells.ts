import { counted } from "../../counted.js";
import type { ProgramSearch, SearchPoint } from "../../study/search/result.js";
import { type Formatter, percent, significant } from "../words/format.js";
import { type Cell, num } from "../words/view-types.js";

/** What the tables of programs are made from. */
export interface ProgramContext {
  readonly result: ProgramSearch;
  readonly format: Formatter;
  readonly letters: ReadonlyMap<string, string>;
  readonly horizon: number;
  readonly startYear: number;
}

export function pointCells(
  point: Pick<SearchPoint, "costPerYear" | "chance" | "cost">,
  { format }: ProgramContext,
): Cell[] {
  return [num(format.money(point.costPerYear)), num(percent(point.chance)), num(format.money(point.cost))];
}

export const chanceHead = (horizon: number) => num(`Chance of infestation in ${counted(horizon, "year")}`);

/** A difference of chances. */
export const points = (value: number) => `${significant(value * 100, 2)} points`;

/** A difference with its sign. */
export const signed = (value: number, text: (value: number) => string) =>
  value === 0 ? text(0) : `${value < 0 ? "−" : "+"}${text(Math.abs(value))}`;
