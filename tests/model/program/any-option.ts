import fc from "fast-check";
import type { ProgramOption } from "../../../src/model/inputs.js";
import { costGroups } from "../../../src/model/program/groups.js";

export const money = { programBearer: "authority", discountRate: 0.03 };

export const emptyOption: ProgramOption = {
  id: "program",
  name: "Program",
  staff: [],
  equipment: [],
  yearly: [],
  fees: [],
  rampUp: [],
  afterInfestation: { share: 0 },
};

const cents = (most: number) => fc.integer({ min: 0, max: most * 100 }).map((each) => each / 100);
const name = fc.constantFrom("one", "two", "three");
const group = fc.option(fc.constantFrom(...costGroups), { nil: undefined });
const share = fc.integer({ min: 0, max: 100 }).map((each) => each / 100);

const staff = fc.record({
  name,
  group,
  hoursPerYear: fc.integer({ min: 0, max: 9000 }),
  wage: cents(80),
  loading: share,
});
const equipment = fc.record({
  name,
  group,
  count: fc.integer({ min: 0, max: 9 }),
  price: cents(50_000),
  life: fc.integer({ min: 1, max: 30 }),
  yearlyCost: fc.option(cents(5000), { nil: undefined }),
});
const yearly = fc.oneof(
  fc.record({ name, group, cost: cents(40_000) }),
  fc.record({ name, group, count: fc.integer({ min: 0, max: 5000 }), unitCost: cents(300) }),
);
const fees = fc.record({
  name,
  countPerYear: fc.integer({ min: 0, max: 9000 }),
  fee: cents(60),
});

/** An option with lines of every kind; amounts invented. */
export const anyOption: fc.Arbitrary<ProgramOption> = fc.record({
  id: fc.constant("program"),
  name: fc.constant("Program"),
  rampUp: fc.constant([]),
  afterInfestation: fc.constant({ share: 0 }),
  staff: fc.array(staff, { maxLength: 4 }),
  equipment: fc.array(equipment, { maxLength: 4 }),
  yearly: fc.array(yearly, { maxLength: 8 }),
  otherRevenue: fc.array(fc.record({ name, amount: cents(20_000) }), { maxLength: 2 }),
  fees: fc.array(fees, { maxLength: 4 }),
  demandLoss: fc.option(fc.record({ fee: fc.constant(1e9), loss: share }), { nil: undefined }),
});
