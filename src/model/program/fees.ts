import { sumOf } from "../../lists.js";
import type { ProgramOption } from "../inputs.js";
import { type Money, noMoney } from "../money/decimal.js";
import { totalOf } from "../money/line.js";
import { type ProgramLine, payingShare } from "./cost.js";

/** What fees would have to be for them to carry a whole program. Money a year of the price year. */
export interface FullCostFee {
  /** Program cost net of other revenue, before fees. Below zero where other revenue is more than the cost. */
  readonly cost: Money;
  readonly feeRevenue: Money;
  /** Boats that pay in a year, less those whom the fee keeps away. */
  readonly payers: number;
  /** Equal for each paying boat; absent where nobody pays, nothing where other revenue carries the cost. */
  readonly perBoat: number | undefined;
  /** On all present fees; absent where they bring in nothing. */
  readonly factor: number | undefined;
  readonly fees: readonly ProportionalFee[];
  /** Whether the equal fee, or any in proportion, is above the highest for which a loss of demand is stated. */
  readonly isBeyondStated: { readonly equal: boolean; readonly inProportion: boolean };
}

interface ProportionalFee {
  readonly name: string;
  readonly vesselClass: string | undefined;
  readonly payers: number;
  readonly fee: number;
  /** Present fee × factor. */
  readonly atFullCost: number | undefined;
}

/**
 * The fee that makes a program's cost net of other revenue, C, nothing: for each paying boat alike, f = C/Σ p(1−l),
 * or as a factor on all present fees, k = C/Σ m g(1−l). Of a fee g, p boats and m payments would come in a year if
 * nobody stayed away; l is the share that does, and is held for every fee up to the highest that the study states.
 * @param lines of the option, see `programLines`
 */
export function fullCostFee(option: ProgramOption, lines: readonly ProgramLine[]): FullCostFee {
  const feeRevenue = noMoney.minus(totalOf(lines.filter(({ group }) => group === "fees")));
  const cost = totalOf(lines).plus(feeRevenue);
  const toCarry = Math.max(0, cost.toNumber());
  const paying = option.fees.map(
    ({ payers, countPerYear }) => (payers ?? countPerYear) * payingShare(option),
  );
  const payers = sumOf(paying);
  const perBoat = payers > 0 ? toCarry / payers : undefined;
  const unrounded = option.fees.reduce((sum, { countPerYear, fee }) => sum + countPerYear * fee, 0);
  const brought = unrounded * payingShare(option);
  const factor = brought > 0 ? toCarry / brought : undefined;
  const fees = option.fees.map(({ name, vesselClass, fee }, index) => ({
    name,
    vesselClass,
    payers: paying[index] ?? 0,
    fee,
    atFullCost: factor === undefined ? undefined : fee * factor,
  }));
  const isBeyond = (fee = 0) => option.demandLoss !== undefined && fee > option.demandLoss.fee;
  return {
    cost,
    feeRevenue,
    payers,
    perBoat,
    factor,
    fees,
    isBeyondStated: {
      equal: isBeyond(perBoat),
      inProportion: fees.some(({ atFullCost }) => isBeyond(atFullCost)),
    },
  };
}
