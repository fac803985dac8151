import { sumOf } from "../../lists.js";
import type { ProgramOption } from "../inputs.js";
import { type Money, noMoney } from "../money/decimal.js";
import { totalOf } from "../money/line.js";
import { lossPerUnit, type ProgramLine, payingShare } from "./cost.js";

/** What fees would have to be for them to carry a whole program. Money a year of the price year. */
export interface FullCostFee {
  /** Program cost net of other revenue, before fees. Below zero where other revenue is more than the cost. */
  readonly cost: Money;
  readonly feeRevenue: Money;
  /** Boats that pay in a year, less those whom the fee keeps away: at present fees, and at the equal fee. */
  readonly payers: number;
  readonly payersAtFullCost: number;
  /** Equal for each paying boat; absent where no fee carries the cost, nothing where other revenue does. */
  readonly perBoat: number | undefined;
  /** On all present fees; absent where none carries the cost. */
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
 * The fee that makes a program's cost net of other revenue, C, nothing: for each paying boat alike, f Σ p (1 − d f) = C,
 * f = 2c/(1 + √(1 − 4dc)) with c = C/Σ p, or as a factor on all present fees, k = 2b/(1 + √(1 − 4bq)) with b = C/Σ m g
 * and q = d Σ m g²/Σ m g. Of a fee g, p boats and m payments would come in a year if nobody stayed away; d is the share
 * that each unit of money keeps away. Where the root has no value, no fee carries the program.
 * @param lines of the option, see `programLines`
 */
export function fullCostFee(option: ProgramOption, lines: readonly ProgramLine[]): FullCostFee {
  const feeRevenue = noMoney.minus(totalOf(lines.filter(({ group }) => group === "fees")));
  const cost = totalOf(lines).plus(feeRevenue);
  const toCarry = Math.max(0, cost.toNumber());
  const lost = lossPerUnit(option);
  const willing = sumOf(option.fees.map(({ payers, countPerYear }) => payers ?? countPerYear));
  const brought = sumOf(option.fees.map(({ countPerYear, fee }) => countPerYear * fee));
  const squares = sumOf(option.fees.map(({ countPerYear, fee }) => countPerYear * fee * fee));
  const perBoat = carrying(toCarry / willing, lost);
  const factor = carrying(toCarry / brought, (lost * squares) / brought);
  const fees = option.fees.map(({ name, vesselClass, fee, payers, countPerYear }) => ({
    name,
    vesselClass,
    payers: (payers ?? countPerYear) * payingShare(option, fee),
    fee,
    atFullCost: factor === undefined ? undefined : fee * factor,
  }));
  const isBeyond = (fee = 0) => option.demandLoss !== undefined && fee > option.demandLoss.fee;
  return {
    cost,
    feeRevenue,
    payers: sumOf(fees.map(({ payers }) => payers)),
    payersAtFullCost: perBoat === undefined ? 0 : willing * payingShare(option, perBoat),
    perBoat,
    factor,
    fees,
    isBeyondStated: {
      equal: isBeyond(perBoat),
      inProportion: fees.some(({ atFullCost }) => isBeyond(atFullCost)),
    },
  };
}

/** The fee of each of so many payments that would carry a cost; absent where none does. Payments if it kept nobody away. */
export const feeToCarry = (
  cost: Money,
  payments: number,
  option: Pick<ProgramOption, "demandLoss">,
): number | undefined => carrying(Math.max(0, cost.toNumber()) / payments, lossPerUnit(option));

/**
 * The lower x at which x (1 − q x) is an amount; absent where there is none.
 * @param lost q, the share lost for each unit of x
 */
function carrying(amount: number, lost: number): number | undefined {
  const under = 1 - 4 * lost * amount;
  return Number.isFinite(amount) && under >= 0 ? (2 * amount) / (1 + Math.sqrt(under)) : undefined;
}
