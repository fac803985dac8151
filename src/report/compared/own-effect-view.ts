import type { OwnEffects } from "../../study/swept/own-effects.js";
import { capitalised, formatter } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** An own value that is to be taken, and what stands in its place so far. */
export interface ValueToTake {
  readonly title: string;
  readonly value: string;
  readonly before: string;
  readonly reason: string;
}

/** Each value with what it alone does to the net benefit, and all of them together. */
export function ownEffectTable(
  values: readonly ValueToTake[],
  { currency, option, before, alone, all }: OwnEffects,
): TableView {
  const { money } = formatter(currency, "si");
  const change = (net: number | undefined) => {
    if (net === undefined || before === undefined) return "not computable";
    const size = money(Math.abs(net - before));
    return net === before ? "none" : `${net < before ? "−" : "+"}${size}`;
  };
  const netText = (net: number | undefined) => (net === undefined ? "not computable" : money(net));
  return {
    id: "table-own-effects",
    caption: `Net benefit of “${option}”, present value at central values: ${netText(before)} as kept`,
    head: head("Assumption", "So far", "Own value", "Reason", num("Net benefit, by it alone"), num("Change")),
    rows: values.map(({ title, before: found, value, reason }, index) => {
      const net = alone[index];
      const told = index < alone.length ? [netText(net), change(net)] : ["not shown", ""];
      return row(capitalised(title), found, value, reason, ...told.map(num));
    }),
    total: row("All together", "", "", "", num(netText(all)), num(change(all))),
  };
}
