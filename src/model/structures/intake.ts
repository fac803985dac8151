import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { flowAtHead, pipeHeadLoss } from "../hydraulics/friction.js";
import { pumpPower } from "../hydraulics/power.js";
import type { Intake, Pipe } from "../inputs.js";
import { at, daysOf, hoursPerDay, secondsPerDay } from "../lake/calendar.js";
import type { Layer } from "../mussels/layer.js";
import { cleaningOf } from "./cleaning.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import { fouledPipeIds, pipeWall, tooThick } from "./pipe.js";
import { rackComponent } from "./rack.js";

/** An intake: its rack, and its conduit with or without a pump. */
export function intakeComponents(intake: Intake, context: LakeContext): Component[] {
  const lossPriced = (extraHead: number, month: number) =>
    intake.supply.by === "pump" ? [pumpEnergy(intake, extraHead, at(intake.demand, month), month)] : [];
  return [
    rackComponent(
      { rack: intake.rack, elevation: intake.elevation, flow: intake.demand, lossPriced },
      context,
    ),
    conduitComponent(intake, context),
  ];
}

/** What a layer does to a conduit at a demand: head used, flow still delivered. */
export interface ConduitState {
  readonly cleanLoss: number;
  readonly fouledLoss: number;
  /** Flow that the fouled pipe delivers. */
  readonly delivered: number;
  /** Flow that the clean pipe would deliver: what it falls short of by itself is not the mussels' doing. */
  readonly cleanDelivered: number;
}

/**
 * The conduit's state at a demand. The head to spend is what gravity gives, or the clean loss at the largest
 * demand plus the pump's margin; where the fouled pipe would need more, it delivers what that head drives.
 */
export function conduitState(
  intake: Intake,
  layer: Layer,
  demand: number,
  context: Pick<LakeContext, "roughness" | "viscosity">,
): ConduitState {
  const { conduit, supply } = intake;
  const { viscosity } = context;
  const fouled = fouledPipe(conduit, layer, context.roughness);
  const largest = Math.max(...intake.demand);
  const available =
    supply.by === "gravity"
      ? supply.availableHead
      : pipeHeadLoss(conduit, largest, viscosity) + supply.marginHead;
  const stateOf = (pipe: Pipe) => {
    const loss = pipeHeadLoss(pipe, demand, viscosity);
    return loss <= available
      ? { loss, delivered: demand }
      : { loss: available, delivered: flowAtHead(pipe, available, viscosity) };
  };
  const clean = stateOf(conduit);
  const now = stateOf(fouled);
  return {
    cleanLoss: clean.loss,
    fouledLoss: now.loss,
    delivered: now.delivered,
    cleanDelivered: clean.delivered,
  };
}

function conduitComponent(intake: Intake, context: LakeContext): Component {
  const wall = pipeWall(intake.conduit, intake.elevation, intake.demand);
  return {
    name: "conduit",
    kind: "conduit",
    designFlow: Math.max(...intake.demand),
    count: 1,
    ...wall,
    cleaning: cleaningOf("conduit", wall.wettedArea, context),
    oxidant: intake.oxidantAllowed ? { flow: intake.demand } : undefined,
    losses: (layer, month) => conduitLosses(intake, layer, month, context),
    brokenLimit: (layer) => tooThick(layer, context),
  };
}

function conduitLosses(intake: Intake, layer: Layer, month: number, context: LakeContext): Priced[] {
  const demand = at(intake.demand, month);
  if (demand === 0) return [];
  const { cleanLoss, fouledLoss, delivered, cleanDelivered } = conduitState(intake, layer, demand, context);
  const shortfall: Priced = {
    what: "water from elsewhere while the conduit falls short",
    type: "loss",
    quantity: Math.max(0, cleanDelivered - delivered) * daysOf(month) * secondsPerDay,
    quantityKind: "volume",
    unitRate: intake.alternativeWater,
    assumptionIds: fouledPipeIds,
  };
  const energy = pumpEnergy(intake, Math.max(0, fouledLoss - cleanLoss), delivered, month);
  return intake.supply.by === "pump" ? [energy, shortfall] : [shortfall];
}

function pumpEnergy(intake: Intake, extraHead: number, flow: number, month: number): Priced {
  const supply = intake.supply;
  const pumped = supply.by === "pump";
  return {
    what: "extra pumping energy",
    type: "loss",
    quantity: pumped ? pumpPower(flow, extraHead, supply.efficiency) * daysOf(month) * hoursPerDay : 0,
    quantityKind: "energy",
    unitRate: pumped ? supply.energyPrice : 0,
    assumptionIds: fouledPipeIds,
  };
}
