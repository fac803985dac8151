import { at } from "../../lists.js";
import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { operatingPoint, type PumpPoint, type PumpRun, pumpHead } from "../hydraulics/pump.js";
import { cleanWaterway, type Waterway } from "../hydraulics/waterway.js";
import { months } from "../lake/calendar.js";
import type { Layer } from "../mussels/layer.js";
import type { LakeContext } from "./context.js";
import type { Withdrawal } from "./inputs.js";
import { type PumpedSupply, pumpedSupply } from "./supply.js";

/** A pump known by its curve in the month of its largest demand, of several that with the lowest lake. */
export interface PumpSummary {
  readonly structure: string;
  readonly control: "on-off" | "variable-speed";
  readonly month: number;
  /** The largest demand, and the head that it needs through the clean conduit. */
  readonly design: PumpPoint;
  /** Full-speed head to spare at the largest demand through the clean conduit, m. */
  readonly margin: number;
  readonly clean: PumpRun;
  readonly fouled: PumpRun;
  /** Full-speed flow, fouled over clean; none of none. */
  readonly capacityLeft: number;
}

/** One summary, or none where the intake has no pump curve. */
export function pumpSummary(
  intake: Withdrawal,
  layer: Layer,
  context: Pick<LakeContext, "monthlyLevels" | "roughness" | "viscosity">,
): PumpSummary[] {
  const supply = pumpedSupply(intake, context);
  if (!supply) return [];
  const { pump, systemHead, run } = supply;
  const demand = Math.max(...intake.demand);
  const clean = cleanWaterway(intake.conduit, { largestFlow: demand, viscosity: context.viscosity });
  const fouled = fouledPipe(clean, layer, context.roughness);
  const month = hardestMonth(intake, supply);
  const head = systemHead(clean, demand, month);
  const fullFlow = (waterway: Waterway) =>
    operatingPoint(pump.curve, (flow) => systemHead(waterway, flow, month)).flow;
  const cleanFlow = fullFlow(clean);
  return [
    {
      structure: intake.name,
      control: pump.control,
      month,
      design: { flow: demand, head },
      margin: pumpHead(pump.curve, demand) - head,
      clean: run(clean, month),
      fouled: run(fouled, month),
      capacityLeft: cleanFlow > 0 ? fullFlow(fouled) / cleanFlow : 0,
    },
  ];
}

function hardestMonth({ demand }: Withdrawal, { lift }: PumpedSupply): number {
  const largest = Math.max(...demand);
  const candidates = months.filter((month) => at(demand, month) === largest);
  return candidates.reduce((hardest, month) => (at(lift, month) > at(lift, hardest) ? month : hardest));
}
