import type { OptionBalance } from "../../model/option-balance.js";
import type { ReportContext } from "../document/context.js";
import { hasRatio, signOf } from "../words/balance-signs.js";
import { ratio } from "../words/format.js";

/** An option in one sentence: whether it pays, and by how much. */
export function verdict(option: OptionBalance, { format, weighed }: ReportContext): string {
  const balance = weighed(option);
  const { result, netBenefit } = balance;
  const size = format.money(netBenefit.abs());
  const net = {
    [-1]: `costs ${size} more than it saves, in present value`,
    0: "makes no difference in present value",
    1: `pays: it saves ${size} more than it costs, in present value`,
  }[signOf(netBenefit)];
  const by = hasRatio(balance) ? ` (ratio ${ratio(balance.benefitCostRatio)})` : "";
  return `“${result.option.name}” ${net}${by}.`;
}
