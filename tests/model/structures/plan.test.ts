import { describe, expect, it, test } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dockComponents } from "../../../src/model/structures/kinds/dock.js";
import { intakeComponents } from "../../../src/model/structures/kinds/intake.js";
import { candidatePlans } from "../../../src/model/structures/plan.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith, idsOfPlanBy } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { fixedDock, floatingDock, gravityIntake, pumpedIntake, sealWater } from "../study.js";

/** What the catalogue offers to a pier's hull at 95 m, bare from New Year's Day to 27 February: 58 days. */
function pierPlans(replaced: Readonly<Record<string, number>> = {}, lake: Lake = drawnDownLake) {
  const context = contextOf(lake, 3, assumedWith(replaced));
  const [hull] = dockComponents({ ...fixedDock, elevation: 95 }, context);
  if (!hull) throw new Error("no hull");
  return candidatePlans(hull, context);
}

/** Prices are carried to any size, unless said otherwise. */
const anySize = assumedWith({ "plan.size-reach": 1000 });

function conduitPlans(intake = pumpedIntake, lake: Lake = drawnDownLake, source = anySize) {
  const context = contextOf(lake, 3, source);
  const conduit = intakeComponents(intake, context).find(({ kind }) => kind === "conduit");
  if (!conduit) throw new Error("no conduit");
  return candidatePlans(conduit, context);
}

describe("the dates of a plan", () => {
  const routineOf = ({ plans }: ReturnType<typeof pierPlans>, id: string) =>
    plans.find((plan) => plan.id === id)?.routine;

  it("in the dry are in the month in the middle of the bare days", () => {
    // By hand: 58 days from New Year's Day have their middle on the 30th of January; lowered for 61 days from
    // 3 September on, in October.
    expect(routineOf(pierPlans(), "dry")).toEqual({ by: "month-of-year", month: 0 });
    const autumn: Lake = {
      ...productiveLake,
      drawdown: [
        { dayOfYear: 0, elevation: 100 },
        { dayOfYear: 244, elevation: 100 },
        { dayOfYear: 245, elevation: 90 },
        { dayOfYear: 305, elevation: 90 },
        { dayOfYear: 306, elevation: 100 },
      ],
    };
    expect(routineOf(pierPlans({}, autumn), "dry")).toEqual({ by: "month-of-year", month: 9 });
  });

  test.each([
    // Quagga settle from 8 °C on (planning value): April to November in this lake. December is when a dosed year ends.
    ["oxidant-end", { by: "month-of-year", month: 10 }],
    ["oxidant-season", { by: "month-of-year", month: 11 }],
    ["trigger", { by: "trigger", limitShare: idsOfPlanBy("trigger").limitShare }],
    ["leave", { by: "nothing" }],
    ["divers-6", { by: "interval", months: 6 }],
  ])("are those of its kind: %s", (id, routine) => {
    expect(routineOf(conduitPlans(), id)).toEqual(routine);
  });
});

describe("a plan is impossible", () => {
  const reasonOf = ({ impossible }: ReturnType<typeof pierPlans>, id: string) =>
    impossible.find((plan) => plan.id === id)?.reason;

  it("in the dry where the water leaves for fewer days than the work needs", () => {
    expect(reasonOf(pierPlans({ "cleaning.dry-days-needed": 58 }), "dry")).toBeUndefined();
    expect(reasonOf(pierPlans({ "cleaning.dry-days-needed": 59 }), "dry")).toBe(
      "the water leaves it for 58 days; the work needs 59",
    );
  });

  it("in the dry where the water never leaves, never comes, or carries it", () => {
    expect(reasonOf(pierPlans({}, productiveLake), "dry")).toBe("the water never leaves it");
    const low: Lake = { ...drawnDownLake, drawdown: [{ dayOfYear: 0, elevation: 90 }] };
    expect(reasonOf(pierPlans({}, low), "dry")).toBe("the water never reaches it");
    const context = contextOf(drawnDownLake, 3);
    const [hull] = dockComponents(floatingDock, context);
    expect(hull && reasonOf(candidatePlans(hull, context), "dry")).toBe("it floats and is never exposed");
  });

  it("with an oxidant where the study forbids it or no larva settles", () => {
    const cold: Lake = { ...drawnDownLake, surfaceTemperature: everyMonth(6) };
    for (const id of ["oxidant-season", "oxidant-end", "permanganate", "copper-ion"]) {
      expect(reasonOf(conduitPlans(), id)).toBeUndefined();
      expect(reasonOf(conduitPlans(gravityIntake), id)).toBe(
        "the study does not allow an oxidant or another chemical here",
      );
      expect(reasonOf(conduitPlans(pumpedIntake, cold), id)).toBe("no month is warm enough for settlement");
    }
  });

  it("where its price is not known for a part of that size, with what to enter", () => {
    // By hand: 8 km of 1 m bore have 25,133 m² of wall, 251 times the 100 m² for which a second line is priced.
    const long = { ...pumpedIntake, conduit: { ...pumpedIntake.conduit, length: 8000, diameter: 1 } };
    const reason = reasonOf(conduitPlans(long, drawnDownLake, assumed), "second-line");
    expect(reason).toMatch(/^its size here is 251 times that for which/);
    expect(reason).toContain("plan.second-line.capital, plan.second-line.reference-size");
    // The reach is met exactly at ten times and at a tenth: 1,000 m² and 10 m² of wall.
    const ofWall = (area: number) => {
      const conduit = { ...pumpedIntake.conduit, diameter: 1, length: area / Math.PI };
      return reasonOf(conduitPlans({ ...pumpedIntake, conduit }, drawnDownLake, assumed), "second-line");
    };
    expect(ofWall(999)).toBeUndefined();
    expect(ofWall(1001)).toMatch(/10 times/);
    expect(ofWall(10.01)).toBeUndefined();
    expect(ofWall(9.9)).toMatch(/0\.099 times/);
  });

  it("and otherwise is tried: each entry of the catalogue for the part is one or the other", () => {
    const { plans, impossible } = conduitPlans(gravityIntake);
    const context = contextOf(drawnDownLake, 3);
    const entries = context.plans.filter(({ parts }) => parts.includes("conduit")).map(({ id }) => id);
    const found = new Set([...plans.map(({ entry }) => entry.id), ...impossible.map(({ id }) => id)]);
    expect([...found].sort()).toEqual(entries.sort());
  });
});

describe("the price of an installation", () => {
  it("holds up to so many times the size for which it stands, and down to one in as many, both included", () => {
    // Four times the reference size, which is a power of 2 so that no digit is lost.
    const replaced = { "plan.size-reach": 4, "plan.foul-release.reference-size": 512 };
    const context = contextOf(drawnDownLake, 3, assumedWith(replaced));
    const isOffered = (wettedArea: number) =>
      dockComponents({ ...floatingDock, count: 1, wettedArea }, context).flatMap((hull) =>
        candidatePlans(hull, context).plans.filter(({ id }) => id === "foul-release"),
      ).length === 1;
    expect([127, 128, 512, 2048, 2049].map(isOffered)).toEqual([false, true, true, true, false]);
  });
});

describe("the words for a plan", () => {
  it("tell how often it is done, whatever it is", () => {
    const context = contextOf(productiveLake, 3);
    const plans = componentsOf(sealWater, context).flatMap((part) => candidatePlans(part, context).plans);
    expect(plans.find(({ id }) => id === "heat-6")?.label).toBe("flushed with hot water every 6 months");
  });

  test.each([
    ["leave", "left as it is"],
    ["divers-1", "cleaned by scraper or pig every month"],
    ["divers-12", "cleaned by scraper or pig every 12 months"],
    ["foul-release", "foul-release coating"],
    ["foul-release-24", "foul-release coating, cleaned every 24 months"],
  ])("%s are: %s", (id, label) => {
    expect(conduitPlans().plans.find((plan) => plan.id === id)?.label).toBe(label);
  });
});
