import { describe, expect, it } from "vitest";
import { bareSurface } from "../../../../src/model/mussels/layer.js";
import type { Charge } from "../../../../src/model/structures/component.js";
import { loadingParameters } from "../../../../src/model/structures/raw-water/loading.js";
import {
  missingShare,
  rawWaterOf,
  type Served,
} from "../../../../src/model/structures/raw-water/raw-water.js";
import { type SmallLine, serviceShare } from "../../../../src/model/structures/small-line.js";
import { assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { plant } from "../../study.js";
import { lossesOf } from "../losses.js";
import { airCoolers, fouled, loadOf, strainerOf } from "./fouled.js";

const source = assumedWith({ "raw-water.strainer-outage": 2 });
const context = contextOf(productiveLake, 3, source);
const area = 20;
const line: SmallLine = {
  ...plant.coolingWater,
  strainer: strainerOf("simplex"),
  coolers: [airCoolers, { name: "oil coolers", count: 1, tubes: 20, bore: 0.01, passes: 1 }],
  orifices: [{ name: "seals", count: 3, bore: 0.02 }],
};

const lost = (what: string): Charge => ({
  what,
  type: "loss",
  quantityKind: "hours",
  unitRate: 1,
  assumptionIds: [],
});
const served: Served = {
  limit: 0.1,
  missing: () => (tell, share, month) => tell(lost(`missing in ${month}`), share),
  standing: () => (tell, hours, month) => tell(lost(`standing in ${month}`), hours),
};

/** What a month costs two lines alike. */
function toldOf(fittings: Partial<SmallLine> = {}, under = fouled) {
  const each = { ...line, ...fittings };
  const share = serviceShare(each, context);
  const rawWater = rawWaterOf(each, { area, count: 2, walls: [], share }, context, served);
  return lossesOf(rawWater, under, 6);
}

describe("the work on a line's fittings", () => {
  it("is hours for each cleaning of each line, and the line and what it serves stand for theirs", () => {
    const load = loadOf(line, area, context);
    const missingOf = missingShare(line, serviceShare(line, context), loadingParameters(context), 0.1);
    const missing = missingOf(fouled, load.left);
    expect(missing).toBeGreaterThan(0);
    // The work is on two lines; the hours out of service are those of one.
    expect(toldOf().map(({ what, quantity }) => [what, quantity])).toEqual([
      ["cleaning the strainer", load.swaps * source("raw-water.strainer-hours") * 2],
      ["cleaning the coolers", load.cleanings * source("raw-water.cooler-hours") * 2],
      ["clearing the orifices", load.clearings * source("raw-water.orifice-hours") * 2],
      ["standing in 6", (load.swaps + load.clearingsOfOne) * source("raw-water.strainer-outage")],
      ["standing in 6", load.cleaningsOfOne * source("raw-water.cooler-outage")],
      ["missing in 6", missing],
    ]);
    expect(toldOf()[0]?.unitRate).toBe(source("labour.maintenance-rate"));
    expect(Math.min(load.swaps, load.cleanings, load.clearings, load.clearingsOfOne)).toBeGreaterThan(0);
  });

  it("tells nothing of what a line has not got, nor of what needs no cleaning", () => {
    const names = (fittings: Partial<SmallLine>, under = fouled) =>
      toldOf(fittings, under).map(({ what }) => what);
    expect(toldOf({}, bareSurface)).toEqual([]);
    const { strainer, orifices } = line;
    const none = { strainer: undefined, coolers: undefined, orifices: undefined };
    expect(names({ ...none, strainer })).toEqual(["cleaning the strainer", "standing in 6"]);
    expect(names({ ...none, orifices })).toEqual(["clearing the orifices", "standing in 6"]);
    expect(names({ ...none, strainer: strainerOf("duplex") })).toEqual(["cleaning the strainer"]);
  });
});
