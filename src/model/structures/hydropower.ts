import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { flowAtHead, type PipeFlow, pipeHeadLoss } from "../hydraulics/friction.js";
import { hydroPower } from "../hydraulics/power.js";
import type { Hydropower } from "../inputs.js";
import { at, daysOf, hoursPerDay, months } from "../lake/calendar.js";
import { monthlyMeans } from "../lake/levels.js";
import type { Layer } from "../mussels/layer.js";
import { cleaningOf } from "./cleaning.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import { fouledPipeIds, pipeWall, tooThick } from "./pipe.js";
import { rackComponent } from "./rack.js";

/** A power plant of equal units: rack, penstock and cooling-water line of all of them together. */
export function hydropowerComponents(plant: Hydropower, context: LakeContext): Component[] {
  const plantYear = operatingYear(plant, context);
  const lossPriced = (extraHead: number, month: number) => [headEnergy(plant, plantYear, extraHead, month)];
  const outage = outageOf(plant, plantYear, context);
  const rack = rackComponent(
    { rack: plant.rack, elevation: plant.elevation, flow: plant.flow, lossPriced, outage },
    context,
  );
  const parts = [
    rack,
    penstockComponent(plant, plantYear, context),
    coolingComponent(plant, plantYear, context),
  ];
  return parts.map((part) => forAllUnits(part, plant.units));
}

export interface OperatingYear {
  /** Head between lake and tailwater less the clean penstock's loss, m, by month. */
  readonly netHead: readonly number[];
  readonly cleanPenstockLoss: readonly number[];
  /** Energy of one unit with everything clean, kWh, by month. */
  readonly energy: readonly number[];
}

/** One unit's year with clean waterways. Head follows the monthly mean level of the drawdown schedule. */
export function operatingYear(
  plant: Hydropower,
  context: Pick<LakeContext, "daily" | "viscosity">,
): OperatingYear {
  const levels = monthlyMeans(context.daily);
  const cleanPenstockLoss = plant.flow.map((flow) => pipeHeadLoss(plant.penstock, flow, context.viscosity));
  const netHead = months.map((month) =>
    Math.max(0, at(levels, month) - plant.tailwaterElevation - at(cleanPenstockLoss, month)),
  );
  const energy = months.map((month) => energyAt(plant, at(netHead, month), month));
  return { netHead, cleanPenstockLoss, energy };
}

function energyAt(plant: Hydropower, head: number, month: number): number {
  return hydroPower(at(plant.flow, month), head, plant.efficiency) * daysOf(month) * hoursPerDay;
}

/** Energy not made for want of head; never more than is made. */
function headEnergy(plant: Hydropower, year: OperatingYear, extraHead: number, month: number): Priced {
  return lostEnergy(
    "energy lost to head",
    energyAt(plant, Math.min(extraHead, at(year.netHead, month)), month),
    at(plant.energyPrice, month),
    fouledPipeIds,
  );
}

/** Energy not made while a unit is out of service, as far as its water is lost. */
function outageOf(plant: Hydropower, year: OperatingYear, context: LakeContext) {
  const lostShareId = "hydropower.outage-lost-share";
  const lostShare = context.assumed(lostShareId);
  return (days: number, month: number): readonly Priced[] => {
    const lostDays = Math.min(days, daysOf(month)) * lostShare;
    const quantity = (at(year.energy, month) / daysOf(month)) * lostDays;
    const ids = ["hydropower.outage-days", lostShareId];
    return [lostEnergy("energy lost in outages", quantity, at(plant.energyPrice, month), ids)];
  };
}

function lostEnergy(
  what: string,
  quantity: number,
  unitRate: number,
  assumptionIds: readonly string[],
): Priced {
  return { what, type: "loss", quantity, quantityKind: "energy", unitRate, assumptionIds };
}

function penstockComponent(plant: Hydropower, year: OperatingYear, context: LakeContext): Component {
  const { penstock } = plant;
  const wall = pipeWall(penstock, plant.elevation, plant.flow);
  return {
    name: "penstock",
    kind: "penstock",
    designFlow: Math.max(...plant.flow),
    count: 1,
    ...wall,
    cleaning: cleaningOf("conduit", wall.wettedArea, context),
    outage: outageOf(plant, year, context),
    losses: (layer, month) => {
      const fouled = fouledPipe(penstock, layer, context.roughness);
      const loss = pipeHeadLoss(fouled, at(plant.flow, month), context.viscosity);
      return [headEnergy(plant, year, Math.max(0, loss - at(year.cleanPenstockLoss, month)), month)];
    },
    brokenLimit: (layer) => tooThick(layer, context),
  };
}

/** Cooling water still delivered over what the clean line gives the unit of its need, 0 to 1. */
export function coolingShare(
  plant: Hydropower,
  layer: Layer,
  context: Pick<LakeContext, "roughness" | "viscosity">,
): number {
  const { coolingWater } = plant;
  const delivered = (line: PipeFlow) =>
    Math.min(coolingWater.requiredFlow, flowAtHead(line, coolingWater.availableHead, context.viscosity));
  return delivered(fouledPipe(coolingWater, layer, context.roughness)) / delivered(coolingWater);
}

/** The unit is derated in proportion to the cooling water that is missing. */
function coolingComponent(plant: Hydropower, year: OperatingYear, context: LakeContext): Component {
  const { coolingWater } = plant;
  const requiredFlow = months.map(() => coolingWater.requiredFlow);
  const wall = pipeWall(coolingWater, plant.elevation, requiredFlow);
  const limit = context.assumed("hydropower.derating-limit");
  return {
    name: "cooling-water line",
    kind: "service-line",
    designFlow: coolingWater.requiredFlow,
    count: 1,
    ...wall,
    cleaning: cleaningOf("service-line", wall.wettedArea, context),
    outage: outageOf(plant, year, context),
    losses: (layer, month) => {
      const missing = 1 - coolingShare(plant, layer, context);
      return [
        lostEnergy(
          "energy lost to derating",
          at(year.energy, month) * missing,
          at(plant.energyPrice, month),
          fouledPipeIds,
        ),
      ];
    },
    brokenLimit: (layer) =>
      1 - coolingShare(plant, layer, context) > limit
        ? "cooling water too short: derating above the limit"
        : undefined,
  };
}

/** The same part on every unit: as many areas, visits and losses. */
function forAllUnits(part: Component, units: number): Component {
  const times = (lines: readonly Priced[]) =>
    lines.map((line) => ({ ...line, quantity: line.quantity * units }));
  const { outage } = part;
  return {
    ...part,
    wettedArea: part.wettedArea * units,
    designFlow: part.designFlow * units,
    count: part.count * units,
    cleaning: { ...part.cleaning, work: (shareId) => times(part.cleaning.work(shareId)) },
    outage: outage && ((days, month) => times(outage(days, month))),
    losses: (layer, month) => times(part.losses(layer, month)),
  };
}
