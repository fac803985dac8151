import type { MoneySettings } from "./inputs.js";
import { bearerIds, centsByBearer } from "./money/bearer.js";
import { type Money, noMoney } from "./money/decimal.js";
import { moneyOf, sumOf } from "./money/line.js";
import { priceGroupOf } from "./money/price-group.js";
import type { OptionResult } from "./option.js";

export interface BearerShare {
  readonly id: string;
  readonly name: string;
  /** Present value of what this bearer would pay for the infestation without the program. */
  readonly lossWithout: Money;
  readonly lossWith: Money;
  readonly avoided: Money;
  /** Part of the added program cost in proportion to the avoided loss. */
  readonly proportionalShare: Money;
  readonly paysNow: Money;
}

/** Who would bear the infestation and what each would pay of the program in proportion to its avoided loss. */
export function bearerShares(
  settings: MoneySettings,
  options: { result: OptionResult; baseline: OptionResult; addedProgramCost: Money },
): BearerShare[] {
  const { result, baseline, addedProgramCost } = options;
  const total = baseline.presentValue.infestation.minus(result.presentValue.infestation);
  const used = new Set([
    ...[baseline, result].flatMap((option) => option.infestationByBearer.map(({ id }) => id)),
    ...result.schedule.operating.flatMap(({ bearer }) => bearerIds(bearer)),
    settings.programBearer,
  ]);
  return settings.bearers
    .filter(({ id }) => used.has(id))
    .map(({ id, name }) => {
      const lossWithout = lossOf(id, baseline);
      const lossWith = lossOf(id, result);
      const avoided = lossWithout.minus(lossWith);
      return {
        id,
        name,
        lossWithout,
        lossWith,
        avoided,
        proportionalShare: total.greaterThan(0) ? addedProgramCost.times(avoided).dividedBy(total) : noMoney,
        paysNow: ownLevels(id, result).plus(
          id === settings.programBearer ? addedProgramCost.minus(result.schedulePresentValue) : noMoney,
        ),
      };
    });
}

/** Present value of what following the option's schedule costs a bearer; the baseline follows none. */
function ownLevels(bearer: string, { schedule, knownWeight }: OptionResult): Money {
  return sumOf(
    schedule.operating.flatMap((line) =>
      centsByBearer(line.bearer, line.cents)
        .filter(([id]) => id === bearer)
        .map(([, cents]) => moneyOf(cents).times(knownWeight(priceGroupOf(line)))),
    ),
  );
}

function lossOf(bearer: string, result: OptionResult): Money {
  return result.infestationByBearer.find(({ id }) => id === bearer)?.presentValue ?? noMoney;
}
