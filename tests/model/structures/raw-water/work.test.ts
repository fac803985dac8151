import { describe, expect, it } from "vitest";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import type { Charge } from "../../../../src/model/structures/component.js";
import {
  type ServiceLine,
  serviceLineComponents,
} from "../../../../src/model/structures/kinds/service-line.js";
import {
  arrivalsOf,
  leftOf,
  loadingOf,
  loadingParameters,
} from "../../../../src/model/structures/raw-water/loading.js";
import { pieceIds, shedPieces } from "../../../../src/model/structures/raw-water/pieces.js";
import {
  missingShare,
  rawWaterOf,
  type Served,
} from "../../../../src/model/structures/raw-water/raw-water.js";
import { type SmallLine, serviceShare } from "../../../../src/model/structures/small-line.js";
import { assumed, assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { plant, sealWater } from "../../study.js";
import { lossesOf } from "../losses.js";

const source = assumedWith({ "raw-water.strainer-outage": 2 });
const context = contextOf(productiveLake, 3, source);
const parameters = loadingParameters(context);
const layer: Layer = {
  ...bareSurface,
  number: 5000,
  lengthMm: 18,
  cover: 1.6,
  mass: 6,
  thickness: 0.012,
  shed: 0.4,
};
const area = 20;
const line: SmallLine = {
  ...plant.coolingWater,
  strainer: { mesh: 0.012, screenArea: 0.3, type: "simplex" },
  coolers: [
    { name: "air coolers", count: 4, tubes: 100, bore: 0.012, passes: 2 },
    { name: "oil coolers", count: 1, tubes: 20, bore: 0.01, passes: 1 },
  ],
  orifices: [{ name: "seals", count: 3, bore: 0.02 }],
};

const lost = (what: string, assumptionIds: Charge["assumptionIds"]): Charge => ({
  what,
  type: "loss",
  quantityKind: "hours",
  unitRate: 1,
  assumptionIds,
});
const served: Served = {
  limit: 0.1,
  missing: (ids) => (tell, share, month) => tell(lost(`missing in ${month}`, ids), share),
  standing: (ids) => (tell, hours, month) => tell(lost(`standing in ${month}`, ids), hours),
};

/** What a month costs two lines alike. */
function toldOf(fittings: Partial<SmallLine> = {}, under = layer) {
  const each = { ...line, ...fittings };
  const share = serviceShare(each, context);
  const rawWater = rawWaterOf(each, { area, count: 2, walls: [], share }, context, served);
  return lossesOf(rawWater, under, 6);
}
/** What the pieces of one line's wall do to its fittings. */
function loadOf(fittings: Partial<SmallLine> = {}) {
  const each = { ...line, ...fittings };
  const pieces = shedPieces(layer, area, parameters.pieces);
  return { ...loadingOf(each, parameters)(arrivalsOf(each, parameters, context.growth)(pieces)) };
}
const quantities = (fittings?: Partial<SmallLine>) =>
  toldOf(fittings).map(({ what, quantity }) => [what, quantity]);

describe("the work on a line's fittings", () => {
  it("is hours for each cleaning of each line, and the line and what it serves stand for theirs", () => {
    const load = loadOf();
    const coolersLeft = { water: load.left.water, tubes: load.left.tubes };
    const missing = missingShare(line, serviceShare(line, context), parameters, 0.1)(layer, coolersLeft);
    expect(missing).toBeGreaterThan(0);
    // Hours for each, of assumptions/raw-water.yaml: 3, 12 and 2 of work; 2 (above) and 8 out of service.
    expect(quantities()).toEqual([
      ["cleaning the strainer", load.swaps * 3 * 2],
      ["cleaning the coolers", load.cleanings * 12 * 2],
      ["clearing the orifices", load.clearings * 2 * 2],
      ["standing in 6", (load.swaps + load.clearingsOfOne) * 2],
      ["standing in 6", load.cleaningsOfOne * 8],
      ["missing in 6", missing],
    ]);
    expect(Math.min(load.swaps, load.cleanings, load.clearings, load.clearingsOfOne)).toBeGreaterThan(0);
  });

  it("tells nothing of what a line has not got, nor of what needs no cleaning", () => {
    const names = (fittings: Partial<SmallLine>, under = layer) =>
      toldOf(fittings, under).map(({ what }) => what);
    expect(toldOf({}, bareSurface)).toEqual([]);
    const { strainer, orifices } = line;
    const none = { strainer: undefined, coolers: undefined, orifices: undefined };
    expect(names({ ...none, strainer })).toEqual(["cleaning the strainer", "standing in 6"]);
    expect(names({ ...none, orifices })).toEqual(["clearing the orifices", "standing in 6"]);
    const duplex = { mesh: 0.012, screenArea: 0.3, type: "duplex" } as const;
    expect(names({ ...none, strainer: duplex })).toEqual(["cleaning the strainer"]);
  });

  it("rests on the size and mass of pieces, on labour and on how much is borne before a cleaning", () => {
    const ids = new Map(
      toldOf().map(({ what, quantity, assumptionIds }) => [`${what} ${quantity > 0}`, assumptionIds]),
    );
    const labour = (hours: string, ...more: string[]) => [
      "labour.maintenance-rate",
      hours,
      ...pieceIds,
      ...more,
    ];
    expect(ids.get("cleaning the strainer true")).toEqual(
      labour("raw-water.strainer-hours", "raw-water.blinded-share"),
    );
    expect(ids.get("clearing the orifices true")).toEqual(
      labour("raw-water.orifice-hours", "raw-water.most-cleanings"),
    );
    expect(toldOf()[0]?.unitRate).toBe(assumed("labour.maintenance-rate"));
  });
});

describe("a service line with fittings", () => {
  const wide = { ...line, diameter: 0.3 };
  const serving = (fittings: Partial<ServiceLine>): ServiceLine => ({
    ...sealWater,
    ...wide,
    shortageCostPerDay: 500,
    ...fittings,
  });
  const partOf = (fittings: Partial<ServiceLine>) => serviceLineComponents(serving(fittings), context)[0];

  it("loses days of each of its lines while they stand and while coolers are plugged", () => {
    const wall = partOf({})?.wettedArea ?? Number.NaN;
    const pieces = shedPieces(layer, wall / 3, parameters.pieces);
    const load = loadingOf(wide, parameters)(arrivalsOf(wide, parameters, context.growth)(pieces));
    const limit = assumed("service-line.shortage-limit");
    const missing = missingShare(wide, serviceShare(wide, context), parameters, limit)(layer, load.left);
    const days = lossesOf(partOf({}), layer, 6).filter(({ type }) => type === "loss");
    // Three lines; 2 hours for a strainer or an orifice, 8 for a cooler, and 31 days of July; the wide bore lacks no water.
    expect(days).toMatchObject([
      { quantity: expect.closeTo((load.swaps + load.clearingsOfOne) * (2 / 24) * 3, 9), unitRate: 500 },
      { quantity: expect.closeTo(load.cleaningsOfOne * (8 / 24) * 3, 9), unitRate: 500 },
      { quantity: expect.closeTo(missing * 31 * 3, 9), unitRate: 500 },
    ]);
    expect(missing).toBeGreaterThan(0);
  });

  it("is fed from upstream, and one without is not", () => {
    expect(partOf({})?.isFed).toBe(true);
    expect(partOf({ coolers: undefined, strainer: undefined, orifices: undefined })?.isFed).toBe(false);
  });
});

describe("service that plugged coolers miss on a line that lets nothing by", () => {
  it("is none: it is missing for want of water", () => {
    // A bore of 100 mm under layers of 60 mm.
    const closed = { ...layer, thickness: 0.06, lengthMm: 25 };
    const coolers = line.coolers ?? [];
    const missing = missingShare(line, serviceShare(line, context), parameters, 0.1);
    expect(missing(closed, leftOf(coolers)(coolers.map(() => 0.5)))).toBe(0);
  });
});
