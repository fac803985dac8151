import { sumOf } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import { Money } from "../../model/money/decimal.js";
import type { OptionBalance } from "../../model/option-balance.js";
import type {
  AvoidedByAccount,
  FuturesOdds,
  Odds,
  OddsAgainst,
  OptionOdds,
  TornadoBar,
} from "../../study/odds/odds.js";

/** What an option adds to doing nothing and is worth, on average over all that is uncertain. Present values. */
export interface AccountBalance {
  readonly addedCost: number;
  readonly avoidedLoss: number;
  readonly netBenefit: number;
  /** Net benefits as they come out: one of ten futures is below, one of ten above. */
  readonly low: number;
  readonly high: number;
  /** Share of futures in which the option pays for itself. */
  readonly paysForItself: number;
  /** Absent where the added cost is next to nothing, or not told apart from nothing by the futures drawn. */
  readonly benefitCostRatio: number | undefined;
}

/** Structures alone, and what of that is entered; beside it the same with the other losses that staff entered. */
interface HeadlineBalance extends AccountBalance {
  readonly avoided: AvoidedByAccount;
  /** The ratio without the duties, and without the policies, that staff entered; absent as the ratio itself is. */
  readonly ratioWithout: Readonly<Record<"duty" | "policy", number | undefined>>;
  /** Absent where staff entered no other losses. */
  readonly withOther: AccountBalance | undefined;
}

export interface OptionHeadline {
  readonly id: string;
  readonly name: string;
  readonly everInfested: number;
  readonly infestedAtEnd: number;
  readonly infestationPerYear: number;
  /** Absent for the option that does nothing. */
  readonly balance: HeadlineBalance | undefined;
}

/** The answer of a study: expectations over all that is uncertain, in place of one case at central values. */
export interface Headline {
  readonly options: readonly OptionHeadline[];
  readonly requested: string;
  readonly baseline: string;
  /** Of the requested option, with everything at its central value. */
  readonly centralNetBenefit: number;
  /** The input whose range is least even in its effect, the way that the average lies. */
  readonly skewedMost: string | undefined;
}

/** What of an option's balance an answer rests on: by a headline, or at central values. */
export type WeighedBalance = Pick<
  OptionBalance,
  "result" | "addedProgramCost" | "avoidedLoss" | "netBenefit" | "benefitCostRatio" | "perYear"
>;

export function headlineOf(
  odds: FuturesOdds & Partial<Pick<Odds, "matters">>,
  { options, discountFactors }: Comparison,
): Headline {
  const annuity = sumOf(discountFactors);
  const told = odds.options.map((option) => optionHeadline(option, annuity));
  const central = options.find(({ result }) => result.option.id === odds.requested)?.netBenefit.toNumber();
  const mean = told.find(({ id }) => id === odds.requested)?.balance?.netBenefit;
  if (central === undefined || mean === undefined)
    throw new Error(`odds do not weigh ${odds.requested} against doing nothing`);
  return {
    options: told,
    requested: odds.requested,
    baseline: odds.baseline,
    centralNetBenefit: central,
    skewedMost: odds.matters && skewedMost(odds.matters, Math.sign(mean - central)),
  };
}

function optionHeadline(option: OptionOdds, annuity: number): OptionHeadline {
  const { id, name, everInfested, infestedAtEnd, meanCost, programCost, against } = option;
  return {
    id,
    name,
    everInfested: everInfested.value,
    infestedAtEnd: infestedAtEnd.value,
    infestationPerYear: (meanCost.value - programCost.value) / annuity,
    balance: against && headlineBalance(against, annuity),
  };
}

function headlineBalance(against: NonNullable<OptionOdds["against"]>, annuity: number): HeadlineBalance {
  const alone = accountBalance(against, annuity);
  const { avoided, ratioWithout, withOther } = against;
  return {
    ...alone,
    avoided,
    ratioWithout:
      alone.benefitCostRatio === undefined ? { duty: undefined, policy: undefined } : ratioWithout,
    withOther: withOther && accountBalance(withOther, annuity),
  };
}

function accountBalance(against: OddsAgainst, annuity: number): AccountBalance {
  const { addedCost, avoidedLoss, netBenefit, cheaper, benefitCostRatio, netBenefits } = against;
  const isTold = addedCost.value / annuity >= 1 && addedCost.value > 2 * addedCost.standardError;
  const at = (share: number) => netBenefits.find((each) => each.share === share)?.value ?? Number.NaN;
  return {
    addedCost: addedCost.value,
    avoidedLoss: avoidedLoss.value,
    netBenefit: netBenefit.value,
    low: at(0.1),
    high: at(0.9),
    paysForItself: cheaper.value,
    benefitCostRatio: isTold ? benefitCostRatio : undefined,
  };
}

function skewedMost({ tornado, netBenefit }: Odds["matters"], sign: number): string | undefined {
  const skewOf = ({ low, high }: TornadoBar) => sign * ((low.netBenefit + high.netBenefit) / 2 - netBenefit);
  const [first] = tornado.toSorted((one, other) => skewOf(other) - skewOf(one));
  return first && skewOf(first) > 0 ? first.name : undefined;
}

/** An option by its id. @throws Error where the headline lacks it */
export function headlineOption({ options }: Headline, id: string): OptionHeadline {
  const found = options.find((each) => each.id === id);
  if (!found) throw new Error(`the headline holds no option ${id}; allowed: one of its options`);
  return found;
}

/** The balance of an option by the headline; at central values where there is none. */
export function weighedBy(
  headline: Headline | undefined,
  option: OptionBalance,
  discountFactors: readonly number[],
): WeighedBalance {
  const balance = headline && headlineOption(headline, option.result.option.id).balance;
  if (!balance) return option;
  const annuity = sumOf(discountFactors);
  return {
    result: option.result,
    addedProgramCost: new Money(balance.addedCost),
    avoidedLoss: new Money(balance.avoidedLoss),
    netBenefit: new Money(balance.netBenefit),
    benefitCostRatio: balance.benefitCostRatio,
    perYear: () => ({
      addedProgramCost: balance.addedCost / annuity,
      avoidedLoss: balance.avoidedLoss / annuity,
    }),
  };
}
