import { at, noElement } from "../../lists.js";
import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { hydroPower } from "../hydraulics/power.js";
import { turbineCurve, turbineEfficiency, turbineIds } from "../hydraulics/turbine.js";
import { cleanWaterway, type Waterway, waterwayLoss } from "../hydraulics/waterway.js";
import { daysOf, hoursPerDay, months } from "../lake/calendar.js";
import type { AssumptionId } from "../register/register.js";
import { cleaningOf, timesAsMuch } from "./cleaning.js";
import type { Charge, Component, Limit, Outage, Tell } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Hydropower } from "./inputs.js";
import { fouledPipeIds, pipeWall, thicknessLimit } from "./pipe.js";
import { plantRunning, type Running } from "./plant/running.js";
import { type HeadLost, rackComponent } from "./rack.js";
import type { UpstreamWall } from "./raw-water/fittings.js";
import { rawWaterOf } from "./raw-water/raw-water.js";
import { serviceShare, smallLineIds } from "./small-line.js";

/** A power plant of equal units: rack, penstock and cooling-water line of all of them together. */
export function hydropowerComponents(plant: Hydropower, context: LakeContext): Component[] {
  const year = operatingYear(plant, context);
  const lossIds = efficiencyIds(plant);
  const headLost = (ids: readonly AssumptionId[]) => headEnergy(plant, year, ids);
  const outage = outageOf(plant, year, context);
  const rack = rackComponent(
    {
      rack: plant.rack,
      count: plant.units,
      elevation: plant.elevation,
      flow: year.running.flow,
      share: year.running.share,
      headLost,
      lossIds,
      outage,
    },
    context,
  );
  const penstock = penstockComponent(plant, year, outage, context);
  return [rack, penstock, coolingComponent(plant, { year, outage, tapped: [rack, penstock] }, context)];
}

export interface OperatingYear {
  readonly running: Running;
  readonly penstock: Waterway;
  /** Head between lake and tailwater less the clean penstock's loss, m, by month. */
  readonly netHead: readonly number[];
  readonly cleanPenstockLoss: readonly number[];
  /** Turbine, generator and transformer together, by month. */
  readonly efficiency: readonly number[];
  /** Energy of one unit with everything clean, kWh, by month. */
  readonly energy: readonly number[];
}

/** One unit's year with clean waterways. Head follows the monthly mean level of the drawdown schedule. */
export function operatingYear(
  plant: Hydropower,
  context: Pick<LakeContext, "monthlyLevels" | "viscosity" | "assumed">,
): OperatingYear {
  const { viscosity, monthlyLevels } = context;
  const running = plantRunning(plant);
  const penstock = cleanWaterway(plant.penstock, { largestFlow: Math.max(...running.flow), viscosity });
  const cleanPenstockLoss = running.flow.map((flow) => waterwayLoss(penstock, flow, viscosity));
  const netHead = months.map((month) =>
    Math.max(0, at(monthlyLevels, month) - plant.tailwaterElevation - at(cleanPenstockLoss, month)),
  );
  const efficiency = monthlyEfficiency(plant, running, context);
  const energy = months.map((month) => energyAt({ running, efficiency }, at(netHead, month), month));
  return { running, penstock, netHead, cleanPenstockLoss, efficiency, energy };
}

/** The constant that is given, or that of the turbine at each month's share of its rated flow and the generator. */
function monthlyEfficiency(
  plant: Hydropower,
  { flow: flows }: Running,
  { assumed }: Pick<LakeContext, "assumed">,
): number[] {
  const { turbine } = plant;
  if (!turbine) return flows.map(() => plant.efficiency ?? 0);
  const curve = turbineCurve(turbine.type, assumed);
  return flows.map(
    (flow) => turbineEfficiency(curve, flow / turbine.ratedFlow) * turbine.generatorEfficiency,
  );
}

/** Power at a head while a unit runs, over its hours of the month. */
function energyAt(
  { running, efficiency }: Pick<OperatingYear, "running" | "efficiency">,
  head: number,
  month: number,
): number {
  return hydroPower(at(running.flow, month), head, at(efficiency, month)) * at(running.hours, month);
}

const efficiencyIds = ({ turbine }: Hydropower) => (turbine ? turbineIds(turbine.type) : []);

/**
 * Energy not made in all units for want of head; never more than is made.
 * @param ids assumptions behind the extra head
 */
function headEnergy(plant: Hydropower, year: OperatingYear, ids: readonly AssumptionId[]): HeadLost {
  const lost = lostEnergy(plant, "energy lost to head", ids);
  return (tell, extraHead, month) =>
    tell(at(lost, month), energyAt(year, Math.min(extraHead, at(year.netHead, month)), month) * plant.units);
}

const lostShareId = "hydropower.outage-lost-share";

/** Assumptions behind the energy that an outage costs. */
const outageIds = (plant: Hydropower): readonly AssumptionId[] => [
  "hydropower.outage-days",
  lostShareId,
  "hydraulics.viscosity",
  ...efficiencyIds(plant),
];

/** Energy not made while each unit is out of service, as far as its water is lost, by days in a month. */
function outageEnergy({ units }: Hydropower, { energy }: OperatingYear, { assumed }: LakeContext) {
  const lostShare = assumed(lostShareId);
  return (days: number, month: number): number => {
    const lostDays = Math.min(days, daysOf(month)) * lostShare;
    return ((energy[month] ?? noElement(energy, month)) / daysOf(month)) * lostDays * units;
  };
}

/** @param moreIds further assumptions behind the days */
const outageCharges = (plant: Hydropower, moreIds: readonly AssumptionId[] = []): readonly Charge[] =>
  lostEnergy(plant, "energy lost in outages", [...outageIds(plant), ...moreIds], "outage");

function outageOf(plant: Hydropower, year: OperatingYear, context: LakeContext): Outage {
  const charges = outageCharges(plant);
  return { charge: (month) => at(charges, month), quantity: outageEnergy(plant, year, context) };
}

/** At the price of each month. */
const lostEnergy = (
  { energyPrice }: Hydropower,
  what: string,
  assumptionIds: readonly AssumptionId[],
  type: Charge["type"] = "loss",
): readonly Charge[] =>
  energyPrice.map((unitRate) => ({ what, type, quantityKind: "energy", unitRate, assumptionIds }));

function penstockComponent(
  plant: Hydropower,
  year: OperatingYear,
  outage: Outage,
  context: LakeContext,
): Component {
  const { running } = year;
  const { units } = plant;
  const wall = pipeWall(plant.penstock, plant.elevation, running);
  const headLost = headEnergy(plant, year, [...fouledPipeIds, ...efficiencyIds(plant)]);
  return {
    name: "penstock",
    kind: "penstock",
    surface: wall.surface,
    wettedArea: wall.wettedArea * units,
    designFlow: Math.max(...running.flow) * units,
    count: units,
    cleaning: timesAsMuch(cleaningOf("conduit", wall.wettedArea, context), units),
    outage,
    losses: (tell, layer, month) => {
      const fouled = fouledPipe(year.penstock, layer, context.roughness);
      const loss = waterwayLoss(fouled, at(running.flow, month), context.viscosity);
      headLost(tell, Math.max(0, loss - at(year.cleanPenstockLoss, month)), month);
    },
    limit: thicknessLimit(context),
  };
}

const deratingId = "hydropower.derating-limit";
const tooDerated: Limit = {
  broken: "cooling water too short: derating above the limit",
  assumptionIds: [deratingId],
};

/** The unit is derated in proportion to the cooling water, or where an exchanger is given the heat, that is missing. */
function coolingComponent(
  plant: Hydropower,
  { year, outage, tapped }: { year: OperatingYear; outage: Outage; tapped: readonly Component[] },
  context: LakeContext,
): Component {
  const { coolingWater, units } = plant;
  const { share: running } = year.running;
  const requiredFlow = months.map(() => coolingWater.requiredFlow);
  const wall = pipeWall(coolingWater, plant.elevation, { flow: requiredFlow, share: running });
  const share = serviceShare(coolingWater, context);
  const limit = context.assumed(deratingId);
  const tooThick = thicknessLimit(context);
  const ids = [...smallLineIds(coolingWater), ...efficiencyIds(plant)];
  const derate = shareOfEnergy(plant, year, "energy lost to derating", ids);
  const walls = coolingWater.upstreamWalls ?? tapped.map(wallOf);
  const lines = { area: wall.wettedArea, count: units, walls, share };
  const rawWater = rawWaterOf(coolingWater, lines, context, {
    limit,
    missing: (lineIds) =>
      shareOfEnergy(plant, year, "energy lost to plugged coolers", [...ids, deratingId, ...lineIds]),
    standing: (lineIds) => {
      const shut = outageCharges(plant, lineIds);
      return (tell, hours, month) => tell(at(shut, month), outage.quantity(hours / hoursPerDay, month));
    },
  });
  return {
    name: "cooling-water line",
    kind: "service-line",
    surface: wall.surface,
    wettedArea: wall.wettedArea * units,
    designFlow: coolingWater.requiredFlow * units,
    count: units,
    cleaning: timesAsMuch(cleaningOf("service-line", wall.wettedArea, context), units),
    oxidant: coolingWater.oxidantAllowed
      ? { flow: running.map((share) => share * coolingWater.requiredFlow * units) }
      : undefined,
    outage,
    isFed: rawWater !== undefined,
    losses: (tell, layer, month, upstream) => {
      const missing = 1 - share(layer);
      if (missing > 0) derate(tell, missing, month);
      rawWater?.losses(tell, layer, month, upstream);
    },
    limit: (meet, layer, month) => {
      meet(tooDerated, 1 - share(layer), limit);
      tooThick(meet, layer);
      rawWater?.limit(meet, layer, month);
    },
  };
}

/** Tells a share of the energy of a clean month in all units. */
function shareOfEnergy(
  plant: Hydropower,
  { energy }: OperatingYear,
  what: string,
  assumptionIds: readonly AssumptionId[],
) {
  const charges = lostEnergy(plant, what, assumptionIds);
  return (tell: Tell, share: number, month: number): void =>
    tell(at(charges, month), at(energy, month) * share * plant.units);
}

/** What breaks off a part comes down the lines that are tapped from it, each unit's from its own. */
const wallOf = ({ surface, wettedArea, designFlow, count }: Component): UpstreamWall => ({
  surface,
  area: wettedArea / count,
  flow: designFlow / count,
});
