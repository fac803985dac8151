import {
  daysOfYear,
  degreesCelsius,
  type Expected,
  flow,
  hours,
  number,
  perYear,
  positiveShare,
  price,
  share,
  squareMetres,
  years,
} from "./expected.js";
import type { AssumptionId } from "./register.js";

const installation = {
  sizeExponent: number({ from: 0, to: 2 }),
  life: years({ above: 0, to: 200 }),
  /** Of the capital. */
  upkeep: perYear({ from: 0, to: 1 }),
  outageDays: daysOfYear,
};

/** An installation that is priced by the wall that it covers. */
const byArea = {
  capital: price("$/m2"),
  referenceSize: squareMetres({ above: 0, to: 1e6 }),
  ...installation,
};

/** An installation that is priced by the flow that it treats. */
const byFlow = {
  capital: price("$/(m3/s)"),
  referenceSize: flow({ above: 0, to: 10_000 }),
  ...installation,
};

/** What each mechanism of a protection plan reads, by what the number is to it. */
export const planNumbers = {
  leave: {},
  clean: {},
  dry: {},
  trigger: { inspection: price("$"), limitShare: positiveShare },
  coating: { ...byArea, settlementFactor: share, cleaningShare: share },
  "oxidant-season": byFlow,
  "oxidant-end": byFlow,
  "chemical-season": { ...byFlow, settlementFactor: share, dosePrice: price("$/m3") },
  filter: { ...byFlow, settlementFactor: share },
  heat: {
    ...byFlow,
    temperature: degreesCelsius({ from: 0, to: 100 }),
    hours: hours({ from: 0, to: 1000 }),
    energyPrice: price("$/kWh"),
    visit: price("$"),
  },
  "second-line": { ...byArea, switchingHours: hours({ from: 0, to: 1000 }) },
} as const satisfies Record<string, Readonly<Record<string, Expected>>>;

/** The mechanism of a plan: how it keeps a surface clean, or mussels off it. */
export type Measure = keyof typeof planNumbers;

type KeyOfEach<Numbers> = Numbers extends unknown ? keyof Numbers : never;

/** What a number may be to a plan: its capital, its life. */
export type PlanNumber = KeyOfEach<(typeof planNumbers)[Measure]>;

/** The ids of the numbers of a plan, by what each is to it. */
export type PlanNumberIds<By extends Measure = Measure> = {
  readonly [Name in keyof (typeof planNumbers)[By]]: AssumptionId;
};
