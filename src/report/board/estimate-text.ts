import { basesOf } from "../document/bases.js";
import type { ReportContext } from "../document/context.js";
import { accuracyRange } from "../document/method.js";
import { percent } from "../words/format.js";

/** The estimate's class and range against the turning point, and how much of it rests on judgement, where the answer stands. */
export function estimateText(context: ReportContext): string {
  const { judged, all } = basesOf(context);
  const { low, high } = accuracyRange;
  const range = `−${percent(-low)} to +${percent(high)}`;
  return `This is an AACE Class 5 (screening) estimate, accurate to ${range}${turningText(context)}. Of the assumptions used, ${percent(all === 0 ? 0 : judged / all)} are judged or from memory.`;
}

/** Whether the damage at which the answer changes lies within that range. */
function turningText({ requested, infestedSince }: ReportContext): string {
  const { lossFactor } = requested.breakEven;
  if (infestedSince !== undefined || lossFactor === undefined) return "";
  const change = lossFactor - 1;
  const isWithin = change >= accuracyRange.low && change <= accuracyRange.high;
  const size = change > accuracyRange.high ? "" : `, ${change < 0 ? "−" : "+"}${percent(Math.abs(change))},`;
  return `; the change in damage that would reverse the answer${size} is ${isWithin ? "within" : "beyond"} that range`;
}
