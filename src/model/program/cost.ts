import { counted } from "../../counted.js";
import type { MoneySettings, ProgramOption } from "../inputs.js";
import { capitalRecoveryFactor } from "../money/interest.js";
import { type CostLine, costLine, type LineDraft } from "../money/line.js";
import type { LineGroup } from "./groups.js";

export interface ProgramLine extends CostLine {
  readonly group: LineGroup;
  /** What is counted, for print: tow, plate, mi. */
  readonly unit?: string | undefined;
}

type Draft = Pick<LineDraft, "what" | "quantity" | "quantityKind" | "unitRate"> &
  Pick<ProgramLine, "group" | "unit">;
type Settings = Pick<MoneySettings, "programBearer" | "discountRate">;

/**
 * A year of an option while the lake is not infested: what is paid every year, and equipment at its capital recovery
 * over its life. Money of the price year; revenue is negative.
 */
export function programLines(option: ProgramOption, money: Settings): ProgramLine[] {
  return [
    ...option.equipment.map(({ name, count, price, life, group = "equipment" }) =>
      programLine(option, money, {
        what: `${name}, yearly over ${counted(life, "year")}`,
        group,
        quantity: count,
        quantityKind: "each",
        unitRate: price * capitalRecoveryFactor(money.discountRate, life),
      }),
    ),
    ...everyYearLines(option, money),
  ];
}

/** What is paid, and comes in, every year alike: wages with loading, running costs, yearly lines, revenue and fees. */
export function everyYearLines(option: ProgramOption, money: Settings): ProgramLine[] {
  const line = (draft: Draft) => programLine(option, money, draft);
  const { staff, equipment, yearly, otherRevenue = [], fees } = option;
  return [
    ...staff.flatMap((each) => staffLines(each, option, money)),
    ...equipment.flatMap(({ name, count, yearlyCost, group = "equipment" }) =>
      yearlyCost === undefined
        ? []
        : line({
            what: `${name}, running cost`,
            group,
            quantity: count,
            quantityKind: "each",
            unitRate: yearlyCost,
          }),
    ),
    ...yearly.map((each) => line(yearlyDraft(each))),
    ...otherRevenue.map(({ name, amount }) =>
      line({ what: name, group: "other-revenue", quantity: 1, quantityKind: "year", unitRate: -amount }),
    ),
    ...fees.map(({ name, countPerYear, fee }) =>
      line({
        what: name,
        group: "fees",
        quantity: countPerYear * payingShare(option, fee),
        quantityKind: "each",
        unitRate: -fee,
      }),
    ),
  ];
}

/** A class of staff: the hours of the year, and its overtime. */
export function staffLines(
  { name, hoursPerYear, wage, loading, overtime, group = "wages" }: ProgramOption["staff"][number],
  option: ProgramOption,
  money: Settings,
): ProgramLine[] {
  const draft = (what: string, quantity: number, pay = 1) =>
    programLine(option, money, {
      what,
      group,
      quantity,
      quantityKind: "hours",
      unitRate: wage * (1 + loading) * pay,
    });
  const paid = draft(name, hoursPerYear);
  return overtime ? [paid, draft(`${name}, overtime`, overtime.hours, overtime.pay)] : [paid];
}

/**
 * Those who still pay of those who would if the fee kept nobody away: 1 less the loss of demand, which is proportional
 * to the fee and as stated at the fee for which it is.
 */
export const payingShare = (option: Pick<ProgramOption, "demandLoss">, fee: number): number =>
  Math.max(0, 1 - fee * lossPerUnit(option));

/** Share of the boats that each unit of money of a fee keeps away. */
export const lossPerUnit = ({ demandLoss }: Pick<ProgramOption, "demandLoss">): number =>
  demandLoss && demandLoss.fee > 0 ? demandLoss.loss / demandLoss.fee : 0;

/** Written out field by field: the engine is slow to copy objects whose numbers are whole or broken. */
function programLine(
  { id: structure }: ProgramOption,
  { programBearer: bearer }: Settings,
  { what, group, unit, quantity, quantityKind, unitRate }: Draft,
): ProgramLine {
  const type = group === "fees" || group === "other-revenue" ? "revenue" : "program";
  const assumptionIds: ProgramLine["assumptionIds"] = [];
  const own = { structure, what, type, bearer, quantity, quantityKind, unitRate, assumptionIds } as const;
  const { cents } = costLine(own);
  return {
    structure,
    what,
    type,
    bearer,
    quantity,
    quantityKind,
    unitRate,
    assumptionIds,
    cents,
    group,
    unit,
  };
}

/** A lump for the year, or a count at a unit price. */
function yearlyDraft(each: ProgramOption["yearly"][number]): Draft {
  const { name, group = "other" } = each;
  return "cost" in each
    ? { what: name, group, quantity: 1, quantityKind: "year", unitRate: each.cost }
    : {
        what: name,
        group,
        unit: each.unit,
        quantity: each.count,
        quantityKind: "each",
        unitRate: each.unitCost,
      };
}
