import type { ReportContext } from "../document/context.js";
import { onlyFollows } from "../words/option-kind.js";
import { type Ask, askOf } from "./ask.js";

/** The motion as its author worded it, or in the usual words with the amounts of the request. */
export function motionText(context: ReportContext): string {
  const { run, requested, infestedSince } = context;
  const own = run.document.report.ask.motion;
  if (own !== undefined) return own;
  const board = boardName(run.document.study);
  const { option, schedule } = requested.result;
  if (onlyFollows(requested.result)) {
    return `Moved, that the ${board} plan that “${schedule.name}” be followed, as far as the dam’s operating rules and permits allow.`;
  }
  if (infestedSince !== undefined) return `Moved, that the ${board} take note of this estimate.`;
  return `Moved, that the ${board} approve “${option.name}”${amountText(askOf(context), context)}, to be reviewed each budget year.`;
}

/** The board's name, to stand after an article. */
export const boardName = ({ board }: { readonly board: string }): string => board.replace(/^the\s+/i, "");

/** The first fiscal year's request. */
function amountText(ask: Ask | undefined, { format }: ReportContext): string {
  const [first] = ask?.years ?? [];
  return first && first.request > 0 ? ` with ${format.exactMoney(first.request)} for ${first.name}` : "";
}

/** What happens if nothing is approved. */
export function notFundedText({
  run,
  requested,
  existing,
  comparison,
  infestedSince,
}: ReportContext): string {
  const own = run.document.report.ask.ifNotFunded;
  if (own !== undefined) return own;
  if (infestedSince !== undefined || onlyFollows(requested.result)) return "";
  const kept =
    existing && existing !== requested.result
      ? `the current program, “${existing.option.name}”, goes on`
      : `the lake has no inspection program; see “${comparison.baseline.option.name}”`;
  return `If it is not funded, ${kept}.`;
}
