import type { Odds, TornadoBar } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { moneyScale } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { inputSpan, numberedName } from "./odds-inputs.js";
import { endsNote } from "./sensitivity-sentences.js";

/** How far the net benefit of the requested option moves with one input at a time. */
export function tornadoTable({ matters }: Odds, context: ReportContext): TableView {
  const { netBenefit, tornado } = matters;
  const scale = moneyScale(
    Math.max(...tornado.flatMap(endsOf).map(Math.abs), Math.abs(netBenefit)),
    context.run.document.money.currency,
  );
  return {
    id: "table-tornado",
    caption: `Net benefit with one input at a time low and high, ${scale.unit} of ${context.priceYear}; ${scale.text(netBenefit)} with all as assumed`,
    head: head("Input", "10th to 90th percentile", num("Input low"), num("Input high")),
    rows: tornado.map((bar) =>
      row(
        numberedName(bar.id, bar.name, context),
        inputSpan(bar, context),
        ...endsOf(bar).map((amount) => num(scale.text(amount))),
      ),
    ),
    note: endsNote,
    compact: true,
  };
}

const endsOf = ({ low, high }: TornadoBar) => [low.netBenefit, high.netBenefit];
