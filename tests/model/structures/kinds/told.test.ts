import { describe, expect, it, test } from "vitest";
import { dock } from "../../../../src/model/structures/kinds/dock.js";
import { hatchery } from "../../../../src/model/structures/kinds/hatchery.js";
import { hydropower } from "../../../../src/model/structures/kinds/hydropower.js";
import { intake } from "../../../../src/model/structures/kinds/intake.js";
import { lakeWide } from "../../../../src/model/structures/kinds/lake-wide.js";
import { pumpingPlant } from "../../../../src/model/structures/kinds/pumping-plant.js";
import { ramp } from "../../../../src/model/structures/kinds/ramp.js";
import { serviceLine } from "../../../../src/model/structures/kinds/service-line.js";
import { treatmentPlant } from "../../../../src/model/structures/kinds/treatment-plant.js";
import { kindOf, pipesOf, structureKinds } from "../../../../src/model/structures/kinds.js";
import type { SizeWord } from "../../../../src/model/structures/structure-kind.js";
import { everyMonth } from "../../near.js";
import {
  duties,
  fixedDock,
  floatingDock,
  gravityIntake,
  ramp as launchRamp,
  plant,
  pumpedIntake,
  sealWater,
} from "../../study.js";
import { pumpingPlant as orchard, hatchery as trout, waterworks } from "../deliveries/served.js";

const textOf = (words: readonly SizeWord[]) =>
  words.map((word) => (typeof word === "string" ? word : `${word.value} ${word.measure}`)).join("");
const at = (elevation: number) => ({ floats: false, low: elevation, high: elevation });

describe("a kind", () => {
  it("is found by its name, with its own object", () => {
    const objects = [intake, pumpingPlant, treatmentPlant, hydropower, serviceLine];
    expect(structureKinds).toEqual([...objects, hatchery, dock, ramp, lakeWide]);
    expect(kindOf(plant)).toBe(hydropower);
  });

  // Of the invented structures, by hand.
  test.each([
    [intake.reach(pumpedIntake), at(88)],
    [pumpingPlant.reach(orchard), at(88)],
    [hydropower.reach(plant), at(84)],
    [serviceLine.reach(sealWater), at(85)],
    [hatchery.reach(trout), at(88)],
    [dock.reach(fixedDock), at(88)],
    [dock.reach({ ...floatingDock, elevation: 88 }), { floats: true }],
    [dock.reach({ ...fixedDock, elevation: undefined }), { floats: true }],
    [ramp.reach(launchRamp), { floats: false, low: 90, high: 100 }],
    [treatmentPlant.reach(waterworks), undefined],
    [lakeWide.reach(duties), undefined],
  ])("stands where it is: %j", (found, expected) => {
    expect(found).toEqual(expected);
  });

  // By hand; the largest of the year's flows. In SI units, as the model has them: 200,000 m³ in the 31 days of July.
  test.each([
    [intake.size(pumpedIntake), "demand up to 1.2 flow, conduit 1.1 smallLength × 1500 length"],
    [pumpingPlant.size(orchard), `1200000 landArea irrigated, up to ${200_000 / (31 * 86_400)} flow`],
    [
      treatmentPlant.size({ ...waterworks, treated: [0.2, ...everyMonth(0.1).slice(1)] }),
      "up to 0.2 flow treated",
    ],
    [
      hydropower.size(plant),
      "2 units, up to 12 flow each (the monthly mean, in all hours), penstock 2.9 smallLength × 150 length",
    ],
    [serviceLine.size(sealWater), "3 lines, 0.1 smallLength × 60 length"],
    [hatchery.size(trout), "up to 0.04 flow, line 0.25 smallLength × 300 length"],
    [dock.size(floatingDock), "5 pieces, 400 area wetted each"],
    [ramp.size(launchRamp), "15 length wide, slope 0.14 ratio"],
    [lakeWide.size(duties), "2 yearly duties"],
  ])("is measured by its size: %j", (words, expected) => {
    expect(textOf(words)).toBe(expected);
  });
});

describe("the water of a kind", () => {
  it("is taken in at its elevation, month by month", () => {
    expect(intake.inlet?.(pumpedIntake)).toEqual({ elevation: 88, flow: pumpedIntake.demand });
    expect(intake.waterTaken?.(pumpedIntake)).toEqual(pumpedIntake.demand);
    expect(hydropower.inlet?.(plant)).toEqual({ elevation: 84, flow: everyMonth(12) });
    expect(serviceLine.inlet?.(sealWater)).toEqual({ elevation: 85, flow: everyMonth(0.008) });
    expect(hatchery.inlet?.(trout)).toEqual({ elevation: 88, flow: trout.requiredFlow });
    // By hand: 60,000 m³ in the 31 days of May.
    expect(pumpingPlant.inlet?.(orchard).flow[4]).toBeCloseTo(60_000 / (31 * 86_400), 15);
  });

  it("passes a rack, where there is one, at its largest flow", () => {
    const { rack } = pumpedIntake;
    expect(intake.rack?.(pumpedIntake)).toEqual({ rack, flow: 1.2 });
    expect(hydropower.rack?.(plant)).toEqual({ rack: plant.rack, flow: 12 });
    expect(hatchery.rack?.(trout)).toBeUndefined();
    expect(hatchery.rack?.({ ...trout, rack })).toEqual({ rack, flow: 0.04 });
    expect(pumpingPlant.rack?.(orchard)).toBeUndefined();
    expect(pumpingPlant.rack?.({ ...orchard, rack })?.flow).toBeCloseTo(200_000 / (31 * 86_400), 15);
  });

  it("runs through its pipes by a head, the lake or a pump", () => {
    const [main, laterals] = pipesOf(orchard);
    // By hand: July's 200,000 m³ over 31 days, in the main and through each of 20 laterals.
    const flow = 200_000 / (31 * 86_400);
    expect(main).toMatchObject({ size: "conduit", drive: { by: "pump" } });
    expect(main?.flow).toBeCloseTo(flow, 15);
    expect(laterals).toMatchObject({ size: "line", at: ["laterals"], line: { count: 20 } });
    expect(laterals?.flow).toBeCloseTo(flow / 20, 15);
    expect(laterals?.drive).toMatchObject({ by: "head", head: 3, at: ["laterals", "availableHead"] });
    expect(pipesOf({ ...orchard, laterals: undefined })).toHaveLength(1);
    // By hand: 4 m less 1.5 m of aeration.
    expect(pipesOf(trout)).toMatchObject([
      { at: ["line"], flow: 0.04, drive: { by: "head", head: 2.5, isDeliveryChecked: false } },
    ]);
    expect(pipesOf(sealWater)).toMatchObject([
      { at: [], flow: 0.008, drive: { head: 4 }, line: { count: 3 } },
    ]);
    expect(pipesOf(gravityIntake)).toMatchObject([
      {
        at: ["conduit"],
        flow: 1.2,
        drive: { by: "head", head: 4, at: ["supply", "availableHead"], isDeliveryChecked: true },
      },
    ]);
    const byLake = { ...gravityIntake, supply: { by: "gravity" as const, outletElevation: 70 } };
    expect(pipesOf(byLake)).toMatchObject([
      { drive: { by: "lake", lowerLevel: 70, lowerName: "outlet", mayFallShort: true } },
    ]);
    expect(pipesOf(plant)).toMatchObject([
      {
        size: "penstock",
        at: ["penstock"],
        flow: 12,
        drive: { by: "lake", lowerLevel: 60, lowerName: "tailwater", mayFallShort: false },
      },
      { size: "line", at: ["coolingWater"], flow: 0.008, line: { count: 2 } },
    ]);
    expect(pipesOf({ ...plant, flow: everyMonth(0) })).toEqual([]);
    expect([...pipesOf(floatingDock), ...pipesOf(waterworks)]).toEqual([]);
  });

  it("passes walls from which lines are tapped, of all that are alike", () => {
    // By hand: π times bore and length, of two penstocks and three lines.
    expect(hydropower.walls?.(plant)[1]).toMatchObject({
      area: expect.closeTo(2 * Math.PI * 2.9 * 150, 6),
      flow: 24,
    });
    expect(serviceLine.walls?.(sealWater)).toMatchObject([
      { area: expect.closeTo(3 * Math.PI * 0.1 * 60, 9), flow: expect.closeTo(0.024, 12) },
    ]);
    expect(intake.walls?.(pumpedIntake)[1]).toMatchObject({
      area: expect.closeTo(Math.PI * 1.1 * 1500, 6),
      flow: 1.2,
    });
  });

  it("treated or lifted is what it gives in a year", () => {
    // By hand: 0.1 m³/s on 365 days; 610,000 m³ on 120 ha.
    expect(treatmentPlant.outputs?.({ ...waterworks, intake: "city-intake" })).toEqual([
      {
        what: "water treated",
        quantity: expect.closeTo(3_153_600, 3),
        measure: "treatedVolume",
        alongWith: "city-intake",
      },
    ]);
    expect(pumpingPlant.outputs?.(orchard).map(({ quantity }) => quantity)).toEqual([610_000, 1_200_000]);
  });

  it("is where a ramp launches boats, over its width", () => {
    expect(ramp.launches?.(launchRamp)).toEqual({ perDay: everyMonth(20), width: 15 });
  });
});

describe("another of the same, 5 m lower and with half of the flow", () => {
  const by = { fall: 5, flowShare: 0.5 };
  const half = (flows: readonly number[]) => flows.map((each) => each / 2);

  it("has all else as it was", () => {
    const demand = half(pumpedIntake.demand);
    expect(intake.lowered(pumpedIntake, by)).toEqual({ ...pumpedIntake, elevation: 83, demand });
    const delivered = half(orchard.delivered);
    expect(pumpingPlant.lowered(orchard, by)).toEqual({ ...orchard, elevation: 83, delivered });
    expect(treatmentPlant.lowered(waterworks, by)).toEqual({ ...waterworks, treated: everyMonth(0.05) });
    expect(hydropower.lowered(plant, by)).toEqual({ ...plant, elevation: 79, flow: everyMonth(6) });
    const running = { flow: everyMonth(16), hours: everyMonth(300) };
    expect(hydropower.lowered({ ...plant, flow: undefined, running }, by)).toMatchObject({
      flow: undefined,
      running: { flow: everyMonth(8), hours: everyMonth(300) },
    });
    expect(serviceLine.lowered(sealWater, by)).toEqual({ ...sealWater, elevation: 80, requiredFlow: 0.004 });
    const requiredFlow = half(trout.requiredFlow);
    expect(hatchery.lowered(trout, by)).toEqual({ ...trout, elevation: 83, requiredFlow });
    expect(dock.lowered(floatingDock, by)).toEqual({ ...floatingDock, depth: 5.5 });
    expect(dock.lowered(fixedDock, by)).toEqual({ ...fixedDock, elevation: 83 });
    expect(ramp.lowered(launchRamp, by)).toEqual({ ...launchRamp, topElevation: 95, bottomElevation: 85 });
    expect(lakeWide.lowered(duties, by)).toEqual(duties);
  });
});
