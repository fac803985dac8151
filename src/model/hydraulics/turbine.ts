import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { AssumptionId } from "../register/register.js";
import type { TurbineType } from "../structures/inputs.js";
import { turbineAssumptions } from "./turbine-ids.js";

interface TurbineCurve {
  readonly peakEfficiency: number;
  /** Efficiency over its peak at 20, 40, 60, 80 and 100 % of the rated flow. */
  readonly relative: readonly number[];
  /** Flow over rated flow below which the turbine does not run. */
  readonly minimumShare: number;
}

export function turbineIds(type: TurbineType): readonly AssumptionId[] {
  const { peakEfficiency, relative, minimumShare } = turbineAssumptions[type];
  return [peakEfficiency, ...relative, minimumShare];
}

export function turbineCurve(type: TurbineType, assumed: Assumed): TurbineCurve {
  const { peakEfficiency, relative, minimumShare } = turbineAssumptions[type];
  return {
    peakEfficiency: assumed(peakEfficiency),
    relative: relative.map(assumed),
    minimumShare: assumed(minimumShare),
  };
}

/**
 * Efficiency of a turbine without its generator, by straight lines between the known shares of the rated flow,
 * η = ηm (y1 + (y2 − y1)·(φ − φ1)/(φ2 − φ1)). Zero below the technical minimum; between that and 20 %, on the line to
 * nothing at no flow. Peaks and minima: European Small Hydropower Association 2004; shapes from memory.
 * @param flowShare flow over rated flow, at most 1
 */
export function turbineEfficiency(curve: TurbineCurve, flowShare: number): number {
  const { peakEfficiency, relative, minimumShare } = curve;
  if (flowShare < minimumShare) return 0;
  const place = Math.min(flowShare, 1) * relative.length;
  const before = Math.min(Math.floor(place), relative.length - 1);
  const start = before === 0 ? 0 : at(relative, before - 1);
  return peakEfficiency * (start + (at(relative, before) - start) * (place - before));
}
