import { describe, expect, it } from "vitest";
import { numberRoom } from "../../../../src/model/mussels/number-room.js";
import type { Charge, Limit } from "../../../../src/model/structures/component.js";
import { Ledger } from "../../../../src/model/structures/plans/ledger.js";
import { planWeights } from "../../../../src/model/structures/plans/weights.js";

const weights = planWeights(
  {
    horizon: 2,
    discountRate: 0.03,
    timing: "mid-year",
    priceYear: 2026,
    startYear: 2026,
    escalation: [{ group: "energy", rate: 0.01 }],
  },
  { isInfested: false, yearsInfested: 0 },
);
const charge = (what: string, quantityKind: Charge["quantityKind"], unitRate: number): Charge => ({
  what,
  type: "loss",
  quantityKind,
  unitRate,
  assumptionIds: [],
});
const haulage = charge("haulage", "mass", 2);
const energy = charge("energy", "energy", 0.1);
const limit = (broken: string): Limit => ({ broken, assumptionIds: [] });

describe("a ledger of many more months than most parts need", () => {
  // In each month its own number of tons and ten times as much energy, and every third month none of either.
  const ledger = new Ledger(weights, numberRoom());
  const months = Array.from({ length: 700 }, (_, month) => {
    const tons = month % 3 === 0 ? 0 : month;
    ledger.tell(haulage, tons);
    ledger.tell(energy, 10 * tons);
    return ledger.endMonth({ limit: limit(`limit ${month}`), load: month / 1000 });
  });

  it("numbers them as they come", () => {
    expect(months).toEqual(months.map((_, month) => month));
  });

  it.each([0, 1, 2, 143, 144, 145, 287, 289, 575, 577, 698])("has month %d as it was told", (month) => {
    const tons = month % 3 === 0 ? 0 : month;
    const sums = [5, 7];
    ledger.addTo(sums, month);
    expect(sums).toEqual([5 + 2 * tons, 7 + tons].map((each) => expect.closeTo(each, 9)));
    expect(ledger.loadIn(month)).toBe(month / 1000);
    expect(ledger.nearestIn(month)).toEqual({ limit: limit(`limit ${month}`), load: month / 1000 });
    const told: unknown[] = [];
    ledger.tellAgain((each, quantity) => told.push([each.what, quantity]), month);
    expect(told).toEqual(
      tons === 0
        ? []
        : [
            ["haulage", tons],
            ["energy", 10 * tons],
          ],
    );
  });
});
