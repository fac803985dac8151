import { lastMade } from "../computed-once.js";
import { exchangerDuty, fouledCoefficient } from "../hydraulics/exchanger.js";
import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { cleanWaterway, type Waterway, waterwayFlow } from "../hydraulics/waterway.js";
import type { Layer } from "../mussels/layer.js";
import type { AssumptionId } from "../register/register.js";
import type { LakeContext } from "./context.js";
import type { Exchanger, Pipe } from "./inputs.js";
import { fouledPipeIds } from "./pipe.js";
import type { Fittings } from "./raw-water/fittings.js";
import type { Left } from "./raw-water/loading.js";

/** A small-bore line with what it has to deliver. */
export type SmallLine = Pipe &
  Fittings & {
    readonly requiredFlow: number;
    readonly availableHead: number;
    readonly exchanger?: Exchanger | undefined;
  };

type LineContext = Pick<LakeContext, "roughness" | "viscosity" | "assumed">;

const resistanceId = "exchanger.fouling-resistance";

/** Assumptions behind what a fouled line still does. */
export const smallLineIds = (line: SmallLine): readonly AssumptionId[] =>
  line.exchanger ? [...fouledPipeIds, resistanceId] : fouledPipeIds;

export const cleanLine = (line: SmallLine, { viscosity }: Pick<LakeContext, "viscosity">): Waterway =>
  cleanWaterway(line, { largestFlow: line.requiredFlow, viscosity });

/**
 * What a line still does over what it does clean, 0 to 1: water delivered, at most the need; where it cools an
 * exchanger, heat carried off at the same inlet temperatures, S = min(Qn, Qf)/min(Qn, Qc) or S = qf/qc. The
 * exchanger's fouling resistance grows with the line's cover to that of river water (`tema`) at a closed layer,
 * R = Rr·min(1, c/c1). Plugged tubes leave less water, w Qf, and where there is an exchanger less of its area, a A.
 */
export function serviceShare(line: SmallLine, context: LineContext): (layer: Layer, left?: Left) => number {
  const { roughness, viscosity } = context;
  const clean = cleanLine(line, context);
  const delivered = (waterway: Waterway) =>
    Math.min(line.requiredFlow, waterwayFlow(waterway, line.availableHead, viscosity));
  const whole = delivered(clean);
  const { exchanger } = line;
  const open: Left = { water: 1, tubes: 1 };
  const fouled = lastMade((layer: Layer) => delivered(fouledPipe(clean, layer, roughness)));
  const through = (layer: Layer, { water }: Left) => water * fouled(layer);
  if (!exchanger) return (layer, left = open) => through(layer, left) / whole;
  const largest = context.assumed(resistanceId);
  const cleanDuty = exchangerDuty(exchanger, whole, exchanger.cleanCoefficient);
  return (layer, left = open) => {
    const resistance = largest * Math.min(1, layer.cover / roughness.closedCover);
    const coefficient = fouledCoefficient(exchanger.cleanCoefficient, resistance);
    const tubes = { ...exchanger, area: exchanger.area * left.tubes };
    return exchangerDuty(tubes, through(layer, left), coefficient) / cleanDuty;
  };
}
