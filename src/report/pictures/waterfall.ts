import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { differenceTexts } from "../words/adding-up.js";
import { alternativeOf, barBetween, type PictureRow, type RowPicture, scaleOver } from "./row-picture.js";

/** From the cost without a program to the cost with the requested option. */
export function waterfall(context: ReportContext): RowPicture {
  const { requested, comparison, headline, infestedSince } = context;
  const { addedProgramCost, avoidedLoss } = context.weighed(requested);
  const [added, avoided] = [addedProgramCost.toNumber(), avoidedLoss.toNumber()];
  const net = avoided - added;
  const told = differenceTexts({ from: avoided, less: added }, boardMoney(context.format));
  const name = requested.result.option.name;
  const place = scaleOver([added, added - avoided]);
  const rows: PictureRow[] = [
    {
      name: added < 0 ? `Cost saved by “${name}”` : `Added cost of “${name}”`,
      value: told.less,
      bars: [barBetween("ramp", 0, added, place)],
    },
    {
      name: avoided < 0 ? "Damage added" : "Damage avoided",
      value: told.from,
      bars: [barBetween("rack", added, added - avoided, place)],
    },
    {
      name: "Net benefit",
      value: told.difference,
      bars: [barBetween("total", 0, -net, place)],
      strong: true,
    },
  ];
  const title = `From “${comparison.baseline.option.name}” to “${name}”: ${
    net > 0
      ? "the damage avoided is more than the program adds"
      : "the program adds more than the damage avoided"
  }`;
  const basis = headline ? "on average over all that is uncertain" : "at central values";
  return {
    title,
    alternative: alternativeOf(title, rows),
    rows,
    lines: [{ x: place(0), kind: "zero" }],
    note: `Present values, ${basis}. The line is ${
      infestedSince === undefined ? `“${comparison.baseline.option.name}”` : "the lake’s own levels"
    }: bars to its right cost more.`,
  };
}
