import type { OptionBalance } from "../../model/option-balance.js";
import type { ReportContext } from "../document/context.js";
import { signOf } from "../words/balance-signs.js";
import { ratio } from "../words/format.js";

/** What is left of each option that counts on boats which its checks keep away; no published text gives that a size. */
export function deterrenceSentences({ format }: ReportContext, options: readonly OptionBalance[]): string[] {
  return options.flatMap(({ result, withoutDeterrence }) => {
    const without = withoutDeterrence();
    if (without === undefined) return [];
    const { netBenefit, benefitCostRatio } = without;
    const size = format.money(netBenefit.abs());
    const net = {
      [-1]: `it would not pay, at a net cost of ${size} in present value`,
      0: "it would break even in present value",
      1: `it would still pay, with a net benefit of ${size} in present value`,
    }[signOf(netBenefit)];
    const by = benefitCostRatio === undefined ? "" : ` (ratio ${ratio(benefitCostRatio)})`;
    return [
      `“${result.option.name}” counts on boats that its checks keep away; if it kept none away, ${net}${by}.`,
    ];
  });
}
