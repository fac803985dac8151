import { fouledPipe } from "../hydraulics/fouled-pipe.js";
import { frictionFactor, gravity, pipeArea, type Regime, regimeOf } from "../hydraulics/friction.js";
import { equivalentC, hazenWilliamsLoss } from "../hydraulics/hazen-williams.js";
import { blockedShare, rackFace, rackLoss } from "../hydraulics/rack.js";
import { cleanWaterway, type Waterway, waterwayFlow, waterwayLoss } from "../hydraulics/waterway.js";
import type { Layer } from "../mussels/layer.js";
import type { ComponentResult } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Rack, RackFormula } from "./inputs.js";
import { kindOf, pipesOf, type Structure } from "./kinds.js";
import type { PipePart } from "./pipe-part.js";
import type { PumpSummary } from "./pump-summary.js";
import { barFactors, costFormula } from "./rack.js";

/** One state of a pipe with every step that leads to its head loss, for a check by hand. */
export interface PipeState {
  readonly bore: number;
  /** Where the clean wall is given by a Hazen–Williams C: the equivalent one at the largest flow. */
  readonly roughness: number;
  readonly velocity: number;
  readonly reynolds: number;
  readonly regime: Regime;
  readonly frictionFactor: number;
  readonly headLoss: number;
  /** Hazen–Williams C of the same friction loss. */
  readonly equivalentC: number;
}

export interface PipeSummary {
  readonly structure: string;
  readonly part: string;
  readonly flow: number;
  readonly length: number;
  readonly minorLoss: number;
  readonly shellLengthMm: number;
  readonly cover: number;
  readonly clean: PipeState;
  /** Absent where the layer closes the bore. */
  readonly fouled: PipeState | undefined;
  /** Flow at the clean pipe's head loss, fouled over clean. */
  readonly capacityLeft: number;
}

export interface RackSummary {
  readonly structure: string;
  readonly flow: number;
  readonly approachVelocity: number;
  /** The formula that the costs use. */
  readonly formula: RackFormula;
  readonly clean: RackLosses;
  readonly fouled: RackLosses | undefined;
}

/** The blocked share of the face and the head lost by each formula. */
export interface RackLosses extends Readonly<Record<RackFormula, number>> {
  readonly blocked: number;
}

export interface HydraulicSummary {
  readonly pipes: readonly PipeSummary[];
  readonly racks: readonly RackSummary[];
  /** Pumps known by their curve. */
  readonly pumps: readonly PumpSummary[];
}

/** Clean and fouled-if-left states at the largest flow of each rack, pipe and pump of a structure. */
export function hydraulicSummary(
  structure: Structure,
  components: readonly ComponentResult[],
  context: LakeContext,
): HydraulicSummary {
  const layerOf = (name: string) => components.find((each) => each.name === name)?.untouchedLayer;
  const summarised = <T>(name: string, summary: (layer: Layer) => T): T[] => {
    const layer = layerOf(name);
    return layer ? [summary(layer)] : [];
  };
  const kind = kindOf(structure);
  const racked = kind.rack?.(structure);
  return {
    pipes: pipesOf(structure).flatMap((part) =>
      summarised(part.name, (layer) => pipeSummary(structure.name, part, layer, context)),
    ),
    racks:
      racked && racked.flow > 0
        ? summarised("trash rack", (layer) =>
            rackSummary({ structure: structure.name, ...racked }, layer, context),
          )
        : [],
    pumps: pipesOf(structure)
      .filter(({ drive }) => drive.by === "pump")
      .flatMap(({ name }) => summarised(name, (layer) => kind.pumps?.(structure, layer, context) ?? []))
      .flat(),
  };
}

function pipeSummary(structure: string, part: PipePart, layer: Layer, context: LakeContext): PipeSummary {
  const { pipe, flow } = part;
  const { viscosity } = context;
  const cleanPipe = cleanWaterway(pipe, { largestFlow: flow, viscosity });
  const fouledWaterway = fouledPipe(cleanPipe, layer, context.roughness);
  const clean = pipeState(cleanPipe, flow, viscosity);
  return {
    structure,
    part: part.name,
    flow,
    length: pipe.length,
    minorLoss: pipe.minorLoss,
    shellLengthMm: layer.lengthMm,
    cover: layer.cover,
    clean,
    fouled: fouledWaterway.diameter > 0 ? pipeState(fouledWaterway, flow, viscosity) : undefined,
    capacityLeft: waterwayFlow(fouledWaterway, clean.headLoss, viscosity) / flow,
  };
}

function pipeState(waterway: Waterway, flow: number, viscosity: number): PipeState {
  const { diameter, length, roughness, hazenWilliamsC } = waterway;
  const velocity = flow / pipeArea(diameter);
  const velocityHead = velocity ** 2 / (2 * gravity);
  const reynolds = (velocity * diameter) / viscosity;
  const headLoss = waterwayLoss(waterway, flow, viscosity);
  const factor =
    hazenWilliamsC === undefined
      ? frictionFactor(reynolds, roughness / diameter)
      : (hazenWilliamsLoss(waterway, flow, hazenWilliamsC) * diameter) / (length * velocityHead);
  // Not the rest beside the local losses: of a short pipe that rest is lost in their last digit.
  const frictionLoss = ((factor * length) / diameter) * velocityHead;
  return {
    bore: diameter,
    roughness,
    velocity,
    reynolds,
    regime: regimeOf(reynolds),
    frictionFactor: factor,
    headLoss,
    equivalentC: equivalentC(waterway, flow, frictionLoss),
  };
}

export function rackSummary(
  { structure, rack, flow }: { structure: string; rack: Rack; flow: number },
  layer: Layer,
  context: LakeContext,
): RackSummary {
  const approachVelocity = flow / rackFace(rack);
  const isOpen = 2 * layer.thickness < rack.clearSpacing;
  return {
    structure,
    flow,
    approachVelocity,
    formula: costFormula(rack),
    clean: rackLosses(rack, 0, approachVelocity, context),
    fouled: isOpen ? rackLosses(rack, layer.thickness, approachVelocity, context) : undefined,
  };
}

function rackLosses(
  rack: Rack,
  layerThickness: number,
  approachVelocity: number,
  context: LakeContext,
): RackLosses {
  const factors = barFactors(rack, context);
  const lossBy = (formula: RackFormula) =>
    rackLoss(formula, rack, { layerThickness, approachVelocity }, factors);
  return {
    blocked: blockedShare(rack, layerThickness),
    meusburger: lossBy("meusburger"),
    kirschmer: lossBy("kirschmer"),
    reclamation: lossBy("reclamation"),
    clark: lossBy("clark"),
  };
}
