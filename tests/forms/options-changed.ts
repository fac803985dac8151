import type { ProgramOption } from "../../src/model/inputs.js";

export type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };
type OptionChange = (option: Mutable<ProgramOption>, to: number, name: string) => void;

const steps =
  (key: string): OptionChange =>
  (option, to) => {
    if (option.steps) option.steps = { ...option.steps, [key]: to };
  };

/** The element of a list that a name begins with, changed. */
function named<Item extends { readonly name: string }>(
  list: readonly Item[],
  name: string,
  change: (item: Item) => Item,
): Item[] {
  return list.map((item) =>
    name.startsWith(`${item.name}:`) || name.startsWith(`${item.name},`) ? change(item) : item,
  );
}

const staff =
  (
    change: (line: ProgramOption["staff"][number], to: number) => ProgramOption["staff"][number],
  ): OptionChange =>
  (option, to, name) => {
    option.staff = named(option.staff, name, (line) => change(line, to));
  };
const equipment =
  (key: "count" | "price" | "life" | "yearlyCost"): OptionChange =>
  (option, to, name) => {
    option.equipment = named(option.equipment, name, (line) => ({ ...line, [key]: to }));
  };
const yearly =
  (key: "cost" | "count" | "unitCost"): OptionChange =>
  (option, to, name) => {
    option.yearly = named(option.yearly, name, (line) => (key in line ? { ...line, [key]: to } : line));
  };
const fees =
  (key: "countPerYear" | "fee"): OptionChange =>
  (option, to, name) => {
    option.fees = named(option.fees, name, (line) => ({ ...line, [key]: to }));
  };
const growth =
  (key: "reach" | "cost"): OptionChange =>
  (option, to, name) => {
    const place = Number(/(\d+)$/.exec(name)?.[1]) - 1;
    option.rampUp = option.rampUp.map((each, year) => (year === place ? { ...each, [key]: to } : each));
  };
const response =
  (key: "cost" | "chance" | "latestYear"): OptionChange =>
  (option, to) => {
    if (option.response) option.response = { ...option.response, [key]: to };
  };

/** What the inputs of an option change of it, by their names. */
export const ofOption: ReadonlyArray<readonly [RegExp, OptionChange]> = [
  [
    /^Share of its cost that goes on/,
    (option, to) => {
      option.afterInfestation = { share: to };
    },
  ],
  [/^Share of its reach in year/, growth("reach")],
  [/^Share of its cost in year/, growth("cost")],
  [/^Launches in open hours/, steps("coverage")],
  [/^Fouled boats kept away/, steps("deterrence")],
  [/^Risky boats that declare/, steps("declaration")],
  [/^Risky boats not declared/, steps("quickCheck")],
  [/^Mussels that the full inspection/, steps("inspection")],
  [/^Mussels that the hot wash/, steps("hotWash")],
  [/^Fouled boats held that are turned/, steps("refusal")],
  [
    /^Boats held that must dry/,
    (option, to) => {
      if (option.steps) option.steps = { ...option.steps, hold: { ...option.steps.hold, share: to } };
    },
  ],
  [
    /: boats with a seal$/,
    (option, to) => {
      if (option.steps)
        option.steps = { ...option.steps, seals: option.steps.seals.map((seal) => ({ ...seal, share: to })) };
    },
  ],
  [
    /: Mussels that the hot wash/,
    (option, to) => {
      if (option.steps)
        option.steps = {
          ...option.steps,
          byClass: option.steps.byClass.map((own) => ({ ...own, hotWash: to })),
        };
    },
  ],
  [/: cost of one attempt$/, response("cost")],
  [/: chance that it succeeds$/, response("chance")],
  [/: last year of an infestation/, response("latestYear")],
  [/: hours paid$/, staff((line, to) => ({ ...line, hoursPerYear: to }))],
  [/: wage an hour$/, staff((line, to) => ({ ...line, wage: to }))],
  [/: benefits over wage$/, staff((line, to) => ({ ...line, loading: to }))],
  [/: overtime$/, staff((line, to) => ({ ...line, overtime: { pay: 1, ...line.overtime, hours: to } }))],
  [
    /: overtime, times/,
    staff((line, to) => ({ ...line, overtime: { hours: 0, ...line.overtime, pay: to } })),
  ],
  [/: number$/, equipment("count")],
  [/: price of one$/, equipment("price")],
  [/: life$/, equipment("life")],
  [/: running cost/, equipment("yearlyCost")],
  [/: number a year$/, yearly("count")],
  [/: cost of one$/, yearly("unitCost")],
  [
    /, received a year$/,
    (option, to, name) => {
      option.otherRevenue = named(option.otherRevenue ?? [], name, (line) => ({ ...line, amount: to }));
    },
  ],
  [/, a year$/, yearly("cost")],
  [/: payments a year/, fees("countPerYear")],
  [/: fee$/, fees("fee")],
  [
    /^Fee for which the loss/,
    (option, to) => {
      if (option.demandLoss) option.demandLoss = { ...option.demandLoss, fee: to };
    },
  ],
  [
    /^Loss of demand/,
    (option, to) => {
      if (option.demandLoss) option.demandLoss = { ...option.demandLoss, loss: to };
    },
  ],
];
