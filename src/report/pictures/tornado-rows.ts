import type { Odds, TornadoBar } from "../../study/odds/odds.js";
import { inputName } from "../odds/odds-inputs.js";
import { capitalised, type Formatter } from "../words/format.js";
import { alternativeOf, barBetween, type RowPicture, scaleOver } from "./row-picture.js";

const mostBars = 5;

/** The five inputs that move the net benefit most; absent where none does. */
export function tornadoRows({ matters }: Pick<Odds, "matters">, format: Formatter): RowPicture | undefined {
  const { netBenefit, tornado } = matters;
  const shown = tornado.filter((bar) => isMoved(bar, format)).slice(0, mostBars);
  if (shown.length === 0) return undefined;
  const place = scaleOver([netBenefit, ...shown.flatMap(endsOf)]);
  const rows = shown.map((bar) => ({
    name: capitalised(inputName(bar.name)),
    value: endsOf(bar)
      .toSorted((one, other) => one - other)
      .map((end) => format.money(end))
      .join(" to "),
    bars: [
      barBetween("low", netBenefit, bar.low.netBenefit, place),
      barBetween("high", netBenefit, bar.high.netBenefit, place),
    ],
  }));
  const decisive = tornado.filter((bar) => endsOf(bar).some((end) => end > 0 !== netBenefit > 0)).length;
  const title =
    decisive === 0
      ? "No input alone reverses the answer"
      : decisive === 1
        ? "One input alone could reverse the answer"
        : `Any one of ${decisive} inputs could reverse the answer`;
  return {
    title,
    alternative: alternativeOf(title, rows),
    rows,
    lines: [
      { x: place(0), kind: "zero" },
      { x: place(netBenefit), kind: "mark" },
    ],
    note: "Net benefit with one input at a time at its low end (light) and its high end (dark), all else at central values. Solid line: it breaks even; dotted: the estimate. The table is in the tables as files, tornado.csv.",
  };
}

/** Whether its ends differ as printed. */
const isMoved = ({ low, high }: TornadoBar, { money }: Formatter) =>
  money(low.netBenefit) !== money(high.netBenefit);

const endsOf = ({ low, high }: TornadoBar) => [low.netBenefit, high.netBenefit];
