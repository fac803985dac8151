import type { OptionBalance } from "../../model/compare.js";
import type { ReportContext } from "../document/context.js";
import { signOf } from "../words/balance-signs.js";
import { ratio } from "../words/format.js";

/** An option in one sentence: whether it pays, and by how much. */
export function verdict(option: OptionBalance, { format }: ReportContext): string {
  const { result, netBenefit, benefitCostRatio } = option;
  const size = format.money(netBenefit.abs());
  const net = {
    [-1]: `does not pay, with a net cost of ${size} in present value`,
    0: "makes no difference in present value",
    1: `pays, with a net benefit of ${size} in present value`,
  }[signOf(netBenefit)];
  const by = benefitCostRatio === undefined ? "" : ` (ratio ${ratio(benefitCostRatio)})`;
  return `“${result.option.name}” ${net}${by}.`;
}
