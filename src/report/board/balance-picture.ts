import type { Comparison } from "../../model/compare.js";
import type { YearlyDifference } from "../../model/option-balance.js";
import { type ReportContext, requestedOption } from "../document/context.js";
import { capitalised, type Formatter } from "../words/format.js";
import { onlyFollows } from "../words/option-kind.js";

/** Two bars on the waterline: what is spent at the ramp and what is avoided at the rack, per year. */
export interface BalancePicture {
  readonly width: number;
  readonly height: number;
  readonly waterline: number;
  readonly bars: readonly Bar[];
  readonly alternative: string;
  readonly rangeNote: string;
}

interface Bar {
  readonly side: "ramp" | "rack";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly label: string;
  readonly value: string;
  readonly labelX: number;
  readonly valueX: number;
  readonly valueY: number;
  readonly whisker?: {
    readonly x: number;
    readonly low: number;
    readonly high: number;
    readonly left: number;
    readonly right: number;
  };
}

const width = 640;
const height = 210;
const waterline = 172;
const tallest = 140;
const barWidth = 130;
const whiskerHalfWidth = 9;

export function balancePicture(context: ReportContext): BalancePicture {
  const { format } = context;
  const { addedProgramCost: program, avoidedLoss: avoided } = context.weighed(context.requested).perYear();
  const tried = triedRange(context, avoided);
  const largest = Math.max(program, avoided, tried?.high ?? 0, 1);
  const y = (amount: number) => waterline - (Math.max(0, amount) / largest) * tallest;
  const rackX = 340;
  const isSchedule = onlyFollows(context.requested.result);
  const verb = program < 0 ? "saved" : "spent";
  const spent = isSchedule ? `${capitalised(verb)} by following it` : `${capitalised(verb)} on inspection`;
  const on = isSchedule ? "following the schedule" : "the program";
  return {
    width,
    height,
    waterline,
    bars: [
      bar({ side: "ramp", x: 60, amount: program, label: spent, value: format.money(Math.abs(program)) }, y),
      {
        ...bar(
          {
            side: "rack",
            x: rackX,
            amount: avoided,
            label: avoided < 0 ? "Damage added" : "Damage avoided",
            value: format.money(Math.abs(avoided)),
          },
          y,
        ),
        ...(tried ? { whisker: whisker(tried, rackX + barWidth / 2, y) } : {}),
      },
    ],
    alternative: `Per year: ${format.money(Math.abs(program))} ${verb} on ${on}, ${format.money(Math.abs(avoided))} of damage ${avoided < 0 ? "added" : "avoided"}${tried ? `, range ${spreadOf(tried, format)}` : ", on average over all that is uncertain"}.`,
    rangeNote: `Per year, prices of ${context.priceYear}${tried ? `, at central values. The whisker runs from ${spreadOf(tried, format)}: the lowest and highest result when one group of uncertain assumptions at a time is set to its low or high value. It is not a probability range` : "; on average over all that is uncertain"}.`,
  };
}

interface TriedRange {
  readonly low: number;
  readonly high: number;
}

/** Losses avoided over the ranges that were tried; absent where the picture shows averages, to which they do not belong. */
function triedRange(context: ReportContext, avoided: number): TriedRange | undefined {
  if (context.headline) return undefined;
  const all = context.run
    .ranges()
    .flatMap(({ low, high }) => [low, high])
    .map((each) => perYear(context, each).avoidedLoss);
  return { low: Math.min(avoided, ...all), high: Math.max(avoided, ...all) };
}

const whisker = ({ low, high }: TriedRange, x: number, y: (amount: number) => number) => ({
  ...{ x, low: y(low), high: y(high), left: x - whiskerHalfWidth, right: x + whiskerHalfWidth },
});

/** Losses from the least to the most avoided; below nothing they are added. */
function spreadOf({ low, high }: TriedRange, { money }: Formatter): string {
  const [from, to] = [money(Math.abs(low)), money(Math.abs(high))];
  if (low >= 0) return `${from} to ${to} avoided`;
  return high < 0 ? `${from} to ${to} added` : `${from} added to ${to} avoided`;
}

function bar(
  input: { side: Bar["side"]; x: number; amount: number; label: string; value: string },
  y: (amount: number) => number,
): Bar {
  const top = y(input.amount);
  return {
    side: input.side,
    x: input.x,
    y: top,
    width: barWidth,
    height: waterline - top,
    label: input.label,
    value: input.value,
    labelX: input.x + barWidth / 2,
    valueX: input.x + barWidth + 14,
    valueY: Math.min(waterline - 8, top + 16),
  };
}

function perYear({ run }: ReportContext, comparison: Comparison): YearlyDifference {
  return requestedOption({ document: run.document, comparison }).perYear();
}
