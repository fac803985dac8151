import { pumpPower } from "../hydraulics/power.js";
import { daysOf, hoursPerDay, secondsPerDay } from "../lake/calendar.js";
import { at } from "../lists.js";
import type { Layer } from "../mussels/layer.js";
import type { AssumptionId } from "../register/register.js";
import { cleaningOf } from "./cleaning.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Intake } from "./inputs.js";
import { fouledPipeIds, pipeWall, thicknessLimit } from "./pipe.js";
import { rackComponent } from "./rack.js";
import { fouledConveyance, type Supply, supplyOf } from "./supply.js";

/** An intake: its rack, and its conduit with or without a pump. */
export function intakeComponents(intake: Intake, context: LakeContext): Component[] {
  const lossPriced = (extraHead: number, month: number, ids: readonly AssumptionId[]) =>
    intake.supply.by === "pump" ? [pumpEnergy(intake, extraHead, at(intake.demand, month), month, ids)] : [];
  return [
    rackComponent(
      { rack: intake.rack, elevation: intake.elevation, flow: intake.demand, lossPriced },
      context,
    ),
    conduitComponent(intake, context),
  ];
}

function conduitComponent(intake: Intake, context: LakeContext): Component {
  const wall = pipeWall(intake.conduit, intake.elevation, intake.demand);
  const supply = supplyOf(intake, context);
  return {
    name: "conduit",
    kind: "conduit",
    designFlow: Math.max(...intake.demand),
    count: 1,
    ...wall,
    cleaning: cleaningOf("conduit", wall.wettedArea, context),
    oxidant: intake.oxidantAllowed ? { flow: intake.demand } : undefined,
    losses: (layer, month) => conduitLosses(intake, supply, layer, month, context),
    brokenLimit: thicknessLimit(context),
  };
}

/** Head that the layer adds at the flow delivered, and water that it keeps from being delivered. */
function conduitLosses(
  intake: Intake,
  supply: Supply,
  layer: Layer,
  month: number,
  context: LakeContext,
): Priced[] {
  if (at(intake.demand, month) === 0) return [];
  const clean = at(supply.cleanYear, month);
  const fouled = fouledConveyance(supply, layer, month, context);
  const shortfall: Priced = {
    what: "water from elsewhere while the conduit falls short",
    type: "loss",
    quantity: Math.max(0, clean.delivered - fouled.delivered) * daysOf(month) * secondsPerDay,
    quantityKind: "volume",
    unitRate: intake.alternativeWater,
    assumptionIds: fouledPipeIds,
  };
  if (intake.supply.by === "gravity") return [shortfall];
  return [
    pumpEnergy(intake, Math.max(0, fouled.head - clean.head), fouled.delivered, month, fouledPipeIds),
    shortfall,
  ];
}

function pumpEnergy(
  intake: Intake,
  extraHead: number,
  flow: number,
  month: number,
  assumptionIds: readonly AssumptionId[],
): Priced {
  const supply = intake.supply;
  const pumped = supply.by === "pump";
  return {
    what: "extra pumping energy",
    type: "loss",
    quantity: pumped ? pumpPower(flow, extraHead, supply.efficiency) * daysOf(month) * hoursPerDay : 0,
    quantityKind: "energy",
    unitRate: pumped ? supply.energyPrice : 0,
    assumptionIds,
  };
}
