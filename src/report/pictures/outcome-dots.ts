import type { Odds } from "../../study/odds/odds.js";
import { requestedOdds } from "../odds/odds-words.js";
import { clearPercent, type Formatter } from "../words/format.js";

/** A hundred simulated outcomes from the worst to the best; geometry in the units of the drawing. */
export interface OutcomeDots {
  readonly title: string;
  readonly alternative: string;
  readonly width: number;
  readonly height: number;
  readonly radius: number;
  readonly dots: ReadonlyArray<{ readonly x: number; readonly y: number; readonly pays: boolean }>;
  readonly marks: ReadonlyArray<{ readonly x: number; readonly anchor: string; readonly text: string }>;
  readonly markY: number;
  readonly note: string;
}

const inColumn = 5;
const columns = 20;
const step = 13;
const radius = 4.6;
const left = 8;
const columnStep = 32;

/** Where 10, 50 and 90 in 100 outcomes are worse. */
const told = [
  { share: 0.1, anchor: "start", words: (amount: string) => `1 in 10 below ${amount}` },
  { share: 0.5, anchor: "middle", words: (amount: string) => `half below ${amount}` },
  { share: 0.9, anchor: "end", words: (amount: string) => `9 in 10 below ${amount}` },
] as const;

/** The requested option's net benefit in a hundred outcomes, each standing for one in a hundred of those simulated. */
export function outcomeDots(odds: Odds, format: Formatter): OutcomeDots {
  const { name, against } = requestedOdds(odds);
  const paying = Math.round(against.cheaper.value * columns * inColumn);
  const all = columns * inColumn;
  const title = `In ${clearPercent(against.cheaper.value)} of simulated outcomes “${name}” pays for itself`;
  const marks = told.flatMap(({ share, anchor, words }) => {
    const found = against.netBenefits.find((each) => each.share === share);
    return found ? [{ x: xOf(share * columns - 0.5), anchor, text: words(format.money(found.value)) }] : [];
  });
  return {
    title,
    alternative: `${title}. Net benefit: ${marks.map(({ text }) => text).join("; ")}.`,
    width: 640,
    height: inColumn * step + 22,
    radius,
    dots: Array.from({ length: all }, (_, index) => ({
      x: xOf(Math.floor(index / inColumn)),
      y: 7 + (index % inColumn) * step,
      pays: index >= all - paying,
    })),
    marks,
    markY: inColumn * step + 16,
    note: "Each dot stands for one in a hundred simulated outcomes, from the worst at the left to the best at the right. Full: the option pays for itself; ring: it does not. Net benefit, present value.",
  };
}

const xOf = (column: number) => left + column * columnStep;
