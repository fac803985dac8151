import { at } from "../../lists.js";
import type { EquipmentLine, ProgramOption } from "../../model/inputs.js";
import { isAbove, minus, most, number, oneLess, over, plus, times, type Worked, when } from "./formula.js";
import type { InputList } from "./input-sheet.js";
import { capitalRecovery } from "./money-inputs.js";

/** Quantity and unit rate of a line of a program, as formulas of the inputs. */
export interface LineInputs {
  readonly quantity: Worked;
  readonly rate: Worked;
}

export interface StaffInputs {
  readonly hours: Worked;
  readonly wage: Worked;
  readonly loading: Worked;
  readonly overtime: { readonly hours: Worked; readonly pay: Worked } | undefined;
}

export interface EquipmentInputs {
  readonly line: EquipmentLine;
  readonly count: Worked;
  readonly price: Worked;
  readonly life: Worked;
  readonly yearlyCost: Worked | undefined;
}

export interface ProgramInputs {
  /** In the order of the program's lines: equipment at its capital recovery first. */
  readonly lines: readonly LineInputs[];
  readonly staff: readonly StaffInputs[];
  readonly equipment: readonly EquipmentInputs[];
}

/** The list of inputs, and the money of its amounts. */
type Inputs = InputList & { readonly currency: string };

/** What a program pays and takes in. @param rate of discount */
export function programInputs(
  list: InputList,
  option: ProgramOption,
  { rate, currency }: { readonly rate: Worked; readonly currency: string },
): ProgramInputs {
  const inputs = { ...list, currency };
  const { name, staff, equipment, yearly, otherRevenue = [], fees } = option;
  const none = [staff, equipment, yearly, otherRevenue, fees].every((each) => each.length === 0);
  if (!none) inputs.section(`“${name}”: what it pays and takes in`);
  const people = staff.map((line) => staffInputs(inputs, line));
  const things = equipment.map((line) => equipmentInputs(inputs, line));
  return {
    staff: people,
    equipment: things,
    lines: [
      ...things.map(({ count, price, life }) => ({
        quantity: count,
        rate: times(price, capitalRecovery(rate, life)),
      })),
      ...people.flatMap(staffLines),
      ...things.flatMap(({ count, yearlyCost }) =>
        yearlyCost === undefined ? [] : [{ quantity: count, rate: yearlyCost }],
      ),
      ...yearly.map((line) => yearlyInputs(inputs, line)),
      ...otherRevenue.map((line) => ({
        quantity: number(1),
        rate: minus(number(0), money(inputs, `${line.name}, received a year`, line.amount)),
      })),
      ...feeInputs(inputs, option),
    ],
  };
}

const money = ({ addShared, currency }: Inputs, name: string, amount: number) =>
  addShared({ name, amount, look: "exact", unit: currency });
const count = ({ addShared }: Inputs, name: string, amount: number, unit = "") =>
  addShared({ name, amount, look: "exact", unit });
const percent = ({ addShared }: Inputs, name: string, amount: number) =>
  addShared({ name, amount, look: "percent" });

function staffInputs(inputs: Inputs, line: ProgramOption["staff"][number]): StaffInputs {
  const { name, hoursPerYear, wage, loading, overtime } = line;
  return {
    hours: count(inputs, `${name}: hours paid`, hoursPerYear, "h a year"),
    wage: money(inputs, `${name}: wage an hour`, wage),
    loading: percent(inputs, `${name}: benefits over wage`, loading),
    overtime: overtime && {
      hours: count(inputs, `${name}: overtime`, overtime.hours, "h a year"),
      pay: count(inputs, `${name}: overtime, times the wage`, overtime.pay),
    },
  };
}

function staffLines({ hours, wage, loading, overtime }: StaffInputs): LineInputs[] {
  const loaded = times(wage, plus(number(1), loading));
  return [
    { quantity: hours, rate: loaded },
    ...(overtime ? [{ quantity: overtime.hours, rate: times(loaded, overtime.pay) }] : []),
  ];
}

function equipmentInputs(inputs: Inputs, line: EquipmentLine): EquipmentInputs {
  const { name, price, life, yearlyCost } = line;
  return {
    line,
    count: count(inputs, `${name}: number`, line.count),
    price: money(inputs, `${name}: price of one`, price),
    life: count(inputs, `${name}: life`, life, "years"),
    yearlyCost:
      yearlyCost === undefined ? undefined : money(inputs, `${name}: running cost of one a year`, yearlyCost),
  };
}

function yearlyInputs(inputs: Inputs, line: ProgramOption["yearly"][number]): LineInputs {
  if ("cost" in line) return { quantity: number(1), rate: money(inputs, `${line.name}, a year`, line.cost) };
  return {
    quantity: count(inputs, `${line.name}: number a year`, line.count, line.unit),
    rate: money(inputs, `${line.name}: cost of one`, line.unitCost),
  };
}

/** Fees of those who still pay: 1 less the loss of demand, in proportion to the fee. */
function feeInputs(inputs: Inputs, { fees, demandLoss }: ProgramOption): LineInputs[] {
  const drafts = fees.map(({ name, countPerYear, fee }) => ({
    payments: count(inputs, `${name}: payments a year if the fee kept nobody away`, countPerYear),
    fee: money(inputs, `${name}: fee`, fee),
  }));
  const loss = demandLoss && {
    fee: money(inputs, "Fee for which the loss of demand is stated", demandLoss.fee),
    share: percent(inputs, "Loss of demand at this fee", demandLoss.loss),
  };
  return drafts.map((_, index) => {
    const { payments, fee } = at(drafts, index);
    return { quantity: times(payments, payingShare(fee, loss)), rate: minus(number(0), fee) };
  });
}

function payingShare(fee: Worked, loss: { fee: Worked; share: Worked } | undefined): Worked {
  if (!loss) return number(1);
  const perUnit = when(isAbove(loss.fee, number(0)), over(loss.share, loss.fee), number(0));
  return most(number(0), oneLess(times(fee, perUnit)));
}
