import { at } from "../../lists.js";
import type { ChanceOrigins, SpreadRate } from "../../model/risk/chance-origins.js";
import { percent } from "../words/format.js";

/** A ruler of yearly chances: where each way puts the chance, and where the answer turns. */
export interface ChanceRuler {
  readonly width: number;
  readonly height: number;
  readonly axisY: number;
  readonly axisFrom: number;
  readonly axisTo: number;
  readonly tickEnd: number;
  readonly tickTextY: number;
  readonly rulerTextY: number;
  readonly valueX: number;
  readonly ticks: ReadonlyArray<{ readonly x: number; readonly text: string; readonly anchor: string }>;
  readonly rows: readonly RulerRow[];
  /** Absent where no chance, or every chance, turns the answer. */
  readonly turn: RulerTurn | undefined;
  readonly alternative: string;
}

/** A line down to the ruler, in pieces that leave out texts. */
interface RulerTurn {
  readonly x: number;
  readonly text: string;
  readonly anchor: string;
  readonly pieces: ReadonlyArray<{ readonly from: number; readonly to: number }>;
}

interface RulerRow {
  readonly y: number;
  readonly textY: number;
  readonly name: string;
  readonly value: string;
  readonly from: number;
  readonly to: number;
  readonly at: number;
  /** Whether this one drives the answer. */
  readonly drives: boolean;
  /** Whether the middle lies beyond the ruler, and is drawn at its end. */
  readonly beyond: boolean;
}

/** A row before it is drawn: yearly chances. */
export interface RulerChance {
  readonly name: string;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  readonly drives: boolean;
}

const width = 420;
const left = 8;
const right = 408;
const rowHeight = 34;
const least = 0.001;
const most = 0.3;
const tickChances = [0.001, 0.003, 0.01, 0.03, 0.1, 0.3];
/** Pixels that a letter takes at most, on average; heights of letters above and below the line that they stand on. */
const letter = { width: 7, above: 11, below: 4 };
/** Standard deviations from the median to the 90th percentile of a normal distribution. */
const toNinetieth = 1.2816;

/** Chance 1 − e^−λ of a rate, with the interval that holds it in four of five cases. */
export function chanceOf(name: string, { rate, spread }: SpreadRate, drives: boolean): RulerChance {
  const at = (deviations: number) => -Math.expm1(-rate * Math.exp(deviations * spread));
  return { name, middle: at(0), low: at(-toNinetieth), high: at(toNinetieth), drives };
}

/** @param turn the yearly chance at which the answer turns */
export function chanceRuler(chances: readonly RulerChance[], turn: number | undefined): ChanceRuler {
  const axisY = 6 + chances.length * rowHeight;
  const shown = turn === undefined || turn < least || turn > most ? undefined : turn;
  const rows = chances.map(rulerRow);
  const told = chances.map(
    ({ name, middle, low, high }) => `${name}: ${percent(middle)} (${percent(low)} to ${percent(high)})`,
  );
  return {
    width,
    height: axisY + 40,
    axisY,
    axisFrom: left,
    axisTo: right,
    tickEnd: axisY + 6,
    tickTextY: axisY + 18,
    rulerTextY: axisY + 34,
    valueX: right,
    ticks: tickChances.map((chance) => ({
      x: xOf(chance),
      text: percent(chance),
      anchor: tickAnchor(chance),
    })),
    rows,
    turn: shown === undefined ? undefined : turnMark(shown, rows, axisY),
    alternative: `Yearly chance of infestation without a program. ${told.join("; ")}. ${turnText(turn)}`,
  };
}

const rulerRow = (each: RulerChance, index: number): RulerRow => ({
  y: 25 + index * rowHeight,
  textY: 14 + index * rowHeight,
  name: each.name,
  value: `${percent(each.middle)} (${percent(each.low)}–${percent(each.high)})`,
  from: xOf(each.low),
  to: xOf(each.high),
  at: xOf(each.middle),
  drives: each.drives,
  beyond: each.middle < least || each.middle > most,
});

/** Texts at the ends stay within the picture. */
const tickAnchor = (chance: number) => (chance === least ? "start" : chance === most ? "end" : "middle");

function turnMark(turn: number, rows: readonly RulerRow[], axisY: number): RulerTurn {
  const x = xOf(turn);
  const inTheWay = rows.filter(
    ({ name, value }) => x < left + name.length * letter.width || x > right - value.length * letter.width,
  );
  return {
    x,
    text: `break-even at ${percent(turn)}`,
    anchor: x > (left + right) / 2 ? "end" : "start",
    pieces: [...inTheWay.map(({ textY }) => textY - letter.above), axisY].map((to, index) => ({
      from: index === 0 ? Math.min(4, to) : at(inTheWay, index - 1).textY + letter.below,
      to,
    })),
  };
}

const turnText = (turn: number | undefined): string =>
  turn === undefined ? "No yearly chance changes the answer." : `It breaks even at ${percent(turn)}.`;

/** Chances beyond the ruler stand at its ends. */
function xOf(chance: number): number {
  const inside = Math.min(most, Math.max(least, chance));
  return left + (Math.log(inside / least) / Math.log(most / least)) * (right - left);
}

/** Whether every figure lies on the ruler; where not, a note says that it is drawn at the end. */
export const isOnRuler = (chances: readonly RulerChance[]): boolean =>
  chances.every(({ low, high }) => low >= least && high <= most);

/** The chance without a program with other ways in and clean years, from the boats' own spread. */
export function usedChance(origins: ChanceOrigins, name: string): RulerChance {
  const { pooled, unchecked, checked, learnedFactor } = origins;
  const at = (deviations: number) =>
    -Math.expm1(-(learnedFactor * pooled.rate * Math.exp(deviations * pooled.spread) + unchecked + checked));
  return { name, middle: at(0), low: at(-toNinetieth), high: at(toNinetieth), drives: true };
}
