import { at, noElement } from "../../lists.js";
import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { type Pump, type PumpRun, pumpCurve, pumpRun } from "../hydraulics/pump.js";
import { cleanWaterway, type Waterway, waterwayFlow, waterwayLoss } from "../hydraulics/waterway.js";
import { months } from "../lake/calendar.js";
import type { Layer } from "../mussels/layer.js";
import type { LakeContext } from "./context.js";
import type { Withdrawal } from "./inputs.js";

export type SupplyContext = Pick<LakeContext, "monthlyLevels" | "roughness" | "viscosity">;

/** What a conduit does in a month. */
export interface Conveyed {
  /** Head that the pipe uses, or that the pump of a curve gives while it runs, m. */
  readonly head: number;
  readonly delivered: number;
}

/** An intake's conduit with what drives its water. */
export interface Supply {
  readonly clean: Waterway;
  /** What the conduit conveys in each month when clean: what it falls short of is not the mussels' doing. */
  readonly cleanYear: readonly Conveyed[];
  readonly convey: (waterway: Waterway, month: number) => Conveyed;
}

export function supplyOf(intake: Withdrawal, context: SupplyContext): Supply {
  const { conduit, demand } = intake;
  const { viscosity } = context;
  const clean = cleanWaterway(conduit, { largestFlow: Math.max(...demand), viscosity });
  const convey = conveyance(intake, clean, context);
  return { clean, cleanYear: months.map((month) => convey(clean, month)), convey };
}

function conveyance(intake: Withdrawal, clean: Waterway, context: SupplyContext): Supply["convey"] {
  const pumped = pumpedSupply(intake, context);
  if (pumped) {
    return (waterway, month) => {
      const { point, delivered } = pumped.run(waterway, month);
      return { head: point.head, delivered };
    };
  }
  const available = availableHeads(intake, clean, context);
  const { viscosity } = context;
  return (waterway, month) => {
    const demand = at(intake.demand, month);
    const loss = waterwayLoss(waterway, demand, viscosity);
    const head = at(available, month);
    return loss <= head
      ? { head: loss, delivered: demand }
      : { head, delivered: waterwayFlow(waterway, head, viscosity) };
  };
}

/**
 * Head to spend on the pipe by month, m. By gravity: what is given, or the monthly mean level above the outlet, at
 * least 0. By a pump known by its margin: the clean loss at the largest demand and the margin.
 */
function availableHeads(
  { supply, demand }: Withdrawal,
  clean: Waterway,
  { monthlyLevels, viscosity }: SupplyContext,
): number[] {
  if (supply.by === "pump") {
    const available = waterwayLoss(clean, Math.max(...demand), viscosity) + (supply.marginHead ?? 0);
    return months.map(() => available);
  }
  const { availableHead, outletElevation } = supply;
  if (outletElevation === undefined) return months.map(() => availableHead ?? 0);
  return monthlyLevels.map((level) => Math.max(0, level - outletElevation));
}

/** A pump known by its curve: lift from the monthly mean level, and its run against a conduit. */
export interface PumpedSupply {
  readonly pump: Pump;
  readonly lift: readonly number[];
  /** Head that a flow needs through a conduit in a month, m. */
  readonly systemHead: (waterway: Waterway, flow: number, month: number) => number;
  readonly run: (waterway: Waterway, month: number) => PumpRun;
}

export function pumpedSupply(
  { supply, demand }: Pick<Withdrawal, "supply" | "demand">,
  { monthlyLevels, viscosity }: Pick<LakeContext, "monthlyLevels" | "viscosity">,
): PumpedSupply | undefined {
  if (supply.by !== "pump" || !supply.curve || supply.deliveryElevation === undefined) return undefined;
  const { deliveryElevation } = supply;
  const pump: Pump = { curve: pumpCurve(supply.curve), control: supply.control ?? "on-off" };
  const lift = monthlyLevels.map((level) => deliveryElevation - level);
  const systemHead = (waterway: Waterway, flow: number, month: number) =>
    (lift[month] ?? noElement(lift, month)) + waterwayLoss(waterway, flow, viscosity);
  const run = (waterway: Waterway, month: number) =>
    pumpRun(pump, (flow) => systemHead(waterway, flow, month), at(demand, month));
  return { pump, lift, systemHead, run };
}

/** The conduit under a layer in a month. */
export function fouledConveyance(
  supply: Supply,
  layer: Layer,
  month: number,
  { roughness }: Pick<LakeContext, "roughness">,
): Conveyed {
  return supply.convey(fouledPipe(supply.clean, layer, roughness), month);
}
