import type { Assumed } from "../../assumed.js";
import { remembered } from "../../computed-once.js";
import type { AssumptionId } from "../../register/register.js";
import type { Charge, Component } from "../component.js";
import type { LakeContext } from "../context.js";
import type { Pipe, PumpSupply, Rack, StructureBase, Withdrawal } from "../inputs.js";
import { intakeComponents } from "../kinds/intake.js";
import { linePart, type PipePart } from "../pipe-part.js";
import { canalComponent, type Distribution, lateralsComponent, meanFlows, seasonal } from "./distribution.js";
import { withSprinklers } from "./sprinklers.js";

/** Pumps that lift water from the lake to irrigated land. */
export interface PumpingPlant extends StructureBase, Distribution {
  readonly kind: "pumping-plant";
  readonly rack?: Rack | undefined;
  /** Pump, motor and drive; efficiency and margin are typical where they are not given. */
  readonly pump: Omit<PumpSupply, "by" | "efficiency"> & { readonly efficiency?: number | undefined };
  /** Discharge main from the pumps to the canal, the laterals or the land. */
  readonly main: Pipe;
  /** Irrigated land, m². */
  readonly area: number;
  readonly method: "sprinklers" | "surface";
  readonly sprinklerCount?: number | undefined;
  readonly nozzleBore?: number | undefined;
  readonly oxidantAllowed: boolean;
}

/** The pumps with their main, as any water drawn from the lake. */
export function pumpedWithdrawal(plant: PumpingPlant, assumed: Assumed) {
  const { efficiency, marginHead, ...pump } = plant.pump;
  return {
    ...plant,
    demand: meanFlows(plant.delivered),
    conduit: plant.main,
    supply: {
      ...pump,
      by: "pump",
      efficiency: efficiency ?? assumed("irrigation.pump-efficiency"),
      marginHead: pump.curve ? undefined : (marginHead ?? assumed("irrigation.pump-margin")),
    },
    alternativeWater: plant.lostDeliveries,
  } as const satisfies Withdrawal;
}

/** What is assumed of pumps of which it is not given. */
function typicalIds({ pump }: PumpingPlant): AssumptionId[] {
  return [
    ...(pump.efficiency === undefined ? (["irrigation.pump-efficiency"] as const) : []),
    ...(pump.marginHead === undefined && !pump.curve ? (["irrigation.pump-margin"] as const) : []),
  ];
}

const mainName = "discharge main";

/** Rack, main, canal and laterals; the last of the pipes has the sprinklers behind it. */
export function pumpingPlantComponents(plant: PumpingPlant, context: LakeContext): Component[] {
  const ids = typicalIds(plant);
  const drawn = intakeComponents(pumpedWithdrawal(plant, context.assumed), context)
    .map((part) => (part.kind === "conduit" ? seasonal({ ...part, name: mainName }, plant) : part))
    .map((part) => (ids.length > 0 ? withIds(part, ids) : part));
  const parts = [
    ...drawn,
    ...(plant.canal ? [canalComponent(plant.canal, plant, context)] : []),
    ...(plant.laterals ? [lateralsComponent(plant.laterals, plant, context)] : []),
  ];
  const last = plant.laterals ? "laterals" : mainName;
  return plant.method === "surface"
    ? parts
    : parts.map((part) => (part.name === last ? withSprinklers(part, plant, context) : part));
}

/** The same part, whose losses rest on further assumptions. */
function withIds(part: Component, ids: readonly AssumptionId[]): Component {
  const named = remembered((charge: Charge) => ({
    ...charge,
    assumptionIds: [...charge.assumptionIds, ...ids],
  }));
  return {
    ...part,
    losses: (tell, layer, month) =>
      part.losses((charge, quantity) => tell(named(charge), quantity), layer, month),
  };
}

export const largestFlow = ({ delivered }: PumpingPlant) => Math.max(...meanFlows(delivered));

export function plantPipes(plant: PumpingPlant): PipePart[] {
  const { main, laterals } = plant;
  const flow = largestFlow(plant);
  const parts: PipePart[] = [
    { name: mainName, size: "conduit", at: ["main"], pipe: main, flow, drive: { by: "pump" } },
  ];
  if (!laterals) return parts;
  const { count, ...line } = laterals;
  return [
    ...parts,
    linePart("laterals", ["laterals"], { line: { ...line, requiredFlow: flow / count }, count }),
  ];
}
