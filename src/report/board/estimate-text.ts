import { basesOf } from "../document/bases.js";
import type { ReportContext } from "../document/context.js";
import { accuracyRange } from "../document/method.js";
import { percent } from "../words/format.js";

/** The estimate's class and range against the turning point, and how much of it rests on judgement, where the answer stands. */
export function estimateText(context: ReportContext): string {
  const { judged, all } = basesOf(context);
  const { low, high } = accuracyRange;
  const range = `−${percent(-low)} to +${percent(high)}`;
  return `The estimate is of class 5 (screening), accurate to ${range}${turningText(context)}. Of the assumptions used, ${percent(all === 0 ? 0 : judged / all)} are judged or from memory.`;
}

/** Whether the damage at which the answer changes lies within that range. */
function turningText({ requested, infestedSince }: ReportContext): string {
  const { lossFactor } = requested.breakEven;
  if (infestedSince !== undefined || lossFactor === undefined) return "";
  const change = lossFactor - 1;
  const isWithin = change >= accuracyRange.low && change <= accuracyRange.high;
  const size =
    change > accuracyRange.high ? "" : `, at ${change < 0 ? "−" : "+"}${percent(Math.abs(change))},`;
  return `; the damage at which the answer changes${size} is ${isWithin ? "within" : "beyond"} that range`;
}
