import { describe, expect, it } from "vitest";
import { dailyElevations } from "../../../src/model/lake/levels.js";
import type { ComponentResult, Priced } from "../../../src/model/structures/component.js";
import type { Contexts, LakeContext } from "../../../src/model/structures/context.js";
import { dockComponents } from "../../../src/model/structures/kinds/dock.js";
import type { PartYear, PartYears } from "../../../src/model/structures/plans/untouched.js";
import { linesByYear } from "../../../src/model/structures/plans/year-table.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextsOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { fixedDock, gravityIntake } from "../study.js";
import { keptPart } from "./kept.js";

const years = 12;

/** Ten metres lower for 61 days from a day on. */
const loweredFrom = (day: number) =>
  dailyElevations([
    { dayOfYear: 0, elevation: 100 },
    { dayOfYear: day, elevation: 100 },
    { dayOfYear: day + 1, elevation: 90 },
    { dayOfYear: day + 61, elevation: 90 },
    { dayOfYear: day + 62, elevation: 100 },
  ]);

const winter = { label: "2001", daily: dailyElevations(drawnDownLake.drawdown) };
const autumn = { label: "2002", daily: loweredFrom(244) };
const full = { label: "2003", daily: dailyElevations(productiveLake.drawdown) };

const pier = { ...fixedDock, elevation: 95 };

const inEach = ([first, ...others]: Contexts, part: (context: LakeContext) => PartYear): PartYears => [
  part(first),
  ...others.map(part),
];

/** The pier's hull over all years of a record, or as if only one of them ever came. */
function kept(record: readonly (typeof winter)[], plan: string, source = assumed): ComponentResult {
  const contexts: Contexts = contextsOf({ ...productiveLake, record }, years, source);
  const hullIn = (context: LakeContext) => {
    const [component] = dockComponents(pier, context);
    if (!component) throw new Error("no hull");
    return { component, context };
  };
  return keptPart(() => inEach(contexts, hullIn), [{ part: "wetted surface", plan, reason: "contract" }]);
}

const costOf = (lines: readonly Priced[] | undefined) =>
  (lines ?? []).reduce((sum, { quantity, unitRate }) => sum + quantity * unitRate, 0);

describe("a record of two different years", () => {
  it.each(["leave", "divers-12", "dry", "copper-paint-12"])(
    "costs what each of its years does on average, and shows the thicker of their layers: %s",
    (plan) => {
      const both = kept([winter, autumn], plan);
      const alone = [winter, autumn].map((year) => kept([year], plan));
      expect(both.chosen.plan.id).toBe(plan);
      const mean = (of: (result: ComponentResult) => number) =>
        alone.reduce((sum, result) => sum + of(result) / 2, 0);
      expect(both.chosen.yearlyCost).toBeCloseTo(
        mean(({ chosen }) => chosen.yearlyCost),
        6,
      );
      for (let year = 0; year < years; year++) {
        expect(costOf(linesByYear(both.told)[year])).toBeCloseTo(
          mean(({ told }) => costOf(linesByYear(told)[year])),
          6,
        );
      }
      const thicknesses = alone.map(({ thickestLayer }) => thickestLayer.thickness);
      expect(both.thickestLayer.thickness).toBe(Math.max(...thicknesses));
    },
  );

  it("has years that differ, so that their order does not decide", () => {
    const [one, other] = [winter, autumn].map((year) => kept([year], "dry"));
    expect(one?.chosen.yearlyCost).not.toBeCloseTo(other?.chosen.yearlyCost ?? Number.NaN, 0);
    const forth = kept([winter, autumn], "dry");
    const back = kept([autumn, winter], "dry");
    expect(forth.chosen.yearlyCost).toBeCloseTo(back.chosen.yearlyCost, 6);
    expect(forth.thickestLayer).toEqual(back.thickestLayer);
  });

  it("comes to leaving the part where each of its years does", () => {
    // A winter drawdown leaves no layer of 20 mm.
    const source = assumedWith({ "cleaning.smallest-layer": 0.02 });
    const comesTo = (record: readonly (typeof winter)[]) =>
      kept(record, "leave", source)
        .everyPlan()
        .find(({ plan }) => plan.id === "divers-12")?.comesToLeaving;
    expect([[winter], [full], [winter, full]].map(comesTo)).toEqual([true, false, false]);
  });

  it("has a plan that no year allows as impossible", () => {
    const { impossible, everyPlan } = kept([full, { ...full, label: "2004" }], "divers-12");
    expect(impossible).toContainEqual(
      expect.objectContaining({ id: "dry", reason: "the water never leaves it" }),
    );
    expect(everyPlan().map(({ plan }) => plan.id)).not.toContain("dry");
  });
});

describe("the limits of a part", () => {
  /** The rack of an intake in the band: a winter drawdown kills it bare, and at full lake mussels close its gaps. */
  const keptRack = (record: readonly (typeof winter)[], pinned: string[] = []) => {
    const structure = { ...gravityIntake, elevation: 95 };
    const contexts = contextsOf({ ...productiveLake, record }, years);
    const rackIn = (context: LakeContext) => {
      const component = componentsOf(structure, context).find(({ kind }) => kind === "rack");
      if (!component) throw new Error("no rack");
      return { component, context };
    };
    return keptPart(
      () => inEach(contexts, rackIn),
      pinned.map((plan) => ({ part: "trash rack", plan, reason: "contract" })),
    );
  };
  const rackOver = (...of: Parameters<typeof keptRack>) => keptRack(...of).chosen;

  it("are kept in a year that does not allow a plan by the cheapest that is done within that year", () => {
    const withinYear = keptRack([full])
      .everyPlan()
      .filter(({ plan: { id } }) => id === "leave" || id === "trigger" || /^divers-(12|6|4|3|2|1)$/.test(id));
    const [cheapest] = withinYear.toSorted((a, b) => a.yearlyCost - b.yearlyCost);
    expect(withinYear).toHaveLength(8);
    expect(cheapest?.plan.id).not.toBe(withinYear[0]?.plan.id);
    const { wayOut } = rackOver([winter, full, winter], ["dry"]);
    expect(wayOut).toEqual({ years: 1, ofYears: 3, labels: [cheapest?.plan.label] });
  });

  it("are told of in every year of a record, whichever comes first", () => {
    expect(rackOver([winter], ["leave"]).brokenLimit).toBeUndefined();
    expect(rackOver([full], ["leave"]).brokenLimit).toMatch(/above the limit/);
    for (const record of [
      [winter, full],
      [full, winter],
    ]) {
      expect(rackOver(record, ["leave"]).brokenLimit).toMatch(/above the limit/);
    }
  });
});

describe("a plan that the study prescribes", () => {
  it("is not followed where it is impossible", () => {
    const { chosen, pinned } = kept([full], "dry");
    expect(pinned).toBeUndefined();
    expect(chosen.plan.id).not.toBe("dry");
  });
});
