import { describe, expect, it } from "vitest";
import { isWithin } from "../../../src/assumptions/bounds.js";
import { type Assumed, recorder } from "../../../src/model/assumed.js";
import { comparisonAssumptions } from "../../../src/model/register/comparison.js";
import { deliveryAssumptions } from "../../../src/model/register/deliveries.js";
import { entryAssumptions } from "../../../src/model/register/entries.js";
import { hydraulicsAssumptions } from "../../../src/model/register/hydraulics.js";
import { musselAssumptions } from "../../../src/model/register/mussels.js";
import { rawWaterAssumptions } from "../../../src/model/register/raw-water.js";
import { type RegisteredId, register } from "../../../src/model/register/register.js";
import { suitabilityAssumptions } from "../../../src/model/register/suitability.js";
import { typedAssumptions } from "../../../src/model/register/typed.js";
import { upkeepAssumptions } from "../../../src/model/register/upkeep.js";
import { assumptionSet } from "../assumptions.js";

const families = [
  comparisonAssumptions,
  deliveryAssumptions,
  entryAssumptions,
  hydraulicsAssumptions,
  musselAssumptions,
  rawWaterAssumptions,
  suitabilityAssumptions,
  typedAssumptions,
  upkeepAssumptions,
];

describe("the register of assumptions", () => {
  it("holds each id in one family alone", () => {
    const all = families.flatMap((family) => Object.keys(family));
    expect(new Set(all).size).toBe(all.length);
    expect(Object.keys(register)).toHaveLength(all.length);
  });

  it("allows more than the range of any shipped entry: bounds are checks, not a second range", () => {
    const narrow = [...assumptionSet.entries.values()].filter(({ id, low, high }) => {
      const bounds = assumptionSet.expected.get(id)?.bounds;
      return !bounds || ![low, high].every((each) => isWithin(each, bounds));
    });
    expect(narrow).toEqual([]);
    expect([...assumptionSet.expected.keys()].sort()).toEqual([...assumptionSet.entries.keys()].sort());
  });
});

describe("a reader of assumptions", () => {
  const one: Assumed = () => 1;

  it("takes the ids of the register and of what plans name", () => {
    const id: RegisteredId = "conduit.largest-layer";
    const named = assumptionSet.plans.flatMap(({ numbers }) => Object.values(numbers));
    const { assumed, ids } = recorder(one);
    for (const each of [id, ...named]) assumed(each);
    expect(ids()).toEqual([id, ...new Set(named)]);
  });

  it("takes no other: the compiler refuses what is not registered", () => {
    // @ts-expect-error -- a letter is missing from the id
    one("conduit.larges-layer");
    // @ts-expect-error -- a number of a plan is read by the id that its entry names
    one("plan.heat.hours");
    // @ts-expect-error -- an id that is put together from any text
    one(`conduit.${String("largest-layer")}`);
    // @ts-expect-error -- a list of ids that holds a stranger
    const ids: readonly RegisteredId[] = ["conduit.largest-layer", "conduit.larges-layer"];
    expect(ids).toHaveLength(2);
  });
});
