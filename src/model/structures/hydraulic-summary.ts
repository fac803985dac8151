import { fouledPipe, type RoughnessParameters } from "../hydraulics/fouled-pipe.js";
import { equivalentC, flowAtHead, frictionFactor, pipeArea, pipeHeadLoss } from "../hydraulics/friction.js";
import {
  blockedShare,
  kirschmerLoss,
  meusburgerLoss,
  rackFace,
  reclamationLoss,
} from "../hydraulics/rack.js";
import type { Pipe, Rack, Structure } from "../inputs.js";
import type { Layer } from "../mussels/layer.js";
import type { ComponentResult } from "./component.js";
import type { LakeContext } from "./context.js";

/** One state of a pipe with every step that leads to its head loss, for a check by hand. */
export interface PipeState {
  readonly bore: number;
  readonly roughness: number;
  readonly velocity: number;
  readonly reynolds: number;
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
  readonly clean: RackLosses;
  readonly fouled: RackLosses | undefined;
}

export interface RackLosses {
  readonly blocked: number;
  readonly meusburger: number;
  readonly kirschmer: number;
  readonly reclamation: number;
}

export interface HydraulicSummary {
  readonly pipes: readonly PipeSummary[];
  readonly racks: readonly RackSummary[];
}

/** Clean and fouled-if-left states at the largest flow of each rack and pipe of a structure. */
export function hydraulicSummary(
  structure: Structure,
  components: readonly ComponentResult[],
  context: LakeContext,
): HydraulicSummary {
  if (structure.kind !== "intake" && structure.kind !== "hydropower") return { pipes: [], racks: [] };
  const largestFlow = Math.max(...(structure.kind === "intake" ? structure.demand : structure.flow));
  if (largestFlow === 0) return { pipes: [], racks: [] };
  const layerOf = (name: string) => components.find((each) => each.name === name)?.untouchedLayer;
  const pipe = (part: string, each: Pipe, pipeFlow: number) => {
    const layer = layerOf(part);
    return layer ? [pipeSummary(structure.name, part, { pipe: each, flow: pipeFlow, layer }, context)] : [];
  };
  const rackLayer = layerOf("trash rack");
  return {
    pipes:
      structure.kind === "intake"
        ? pipe("conduit", structure.conduit, largestFlow)
        : [
            ...pipe("penstock", structure.penstock, largestFlow),
            ...pipe("cooling-water line", structure.coolingWater, structure.coolingWater.requiredFlow),
          ],
    racks: rackLayer ? [rackSummary(structure.name, structure.rack, largestFlow, rackLayer, context)] : [],
  };
}

function pipeSummary(
  structure: string,
  part: string,
  input: { pipe: Pipe; flow: number; layer: Layer },
  { roughness, viscosity }: { roughness: RoughnessParameters; viscosity: number },
): PipeSummary {
  const { pipe, flow, layer } = input;
  const fouled = fouledPipe(pipe, layer, roughness);
  const clean = pipeState(pipe, flow, viscosity);
  return {
    structure,
    part,
    flow,
    length: pipe.length,
    minorLoss: pipe.minorLoss,
    shellLengthMm: layer.lengthMm,
    cover: layer.cover,
    clean,
    fouled: fouled.diameter > 0 ? pipeState(fouled, flow, viscosity) : undefined,
    capacityLeft: flowAtHead(fouled, clean.headLoss, viscosity) / flow,
  };
}

function pipeState(pipe: Pipe, flow: number, viscosity: number): PipeState {
  const velocity = flow / pipeArea(pipe.diameter);
  const reynolds = (velocity * pipe.diameter) / viscosity;
  const frictionLoss = pipeHeadLoss({ ...pipe, minorLoss: 0 }, flow, viscosity);
  return {
    bore: pipe.diameter,
    roughness: pipe.roughness,
    velocity,
    reynolds,
    frictionFactor: frictionFactor(reynolds, pipe.roughness / pipe.diameter),
    headLoss: pipeHeadLoss(pipe, flow, viscosity),
    equivalentC: equivalentC(pipe, flow, frictionLoss),
  };
}

function rackSummary(
  structure: string,
  rack: Rack,
  flow: number,
  layer: Layer,
  context: LakeContext,
): RackSummary {
  const approachVelocity = flow / rackFace(rack);
  const factor = context.assumed(`hydraulics.bar-shape.${rack.barShape}`);
  return {
    structure,
    flow,
    approachVelocity,
    clean: rackLosses(rack, 0, approachVelocity, factor),
    fouled:
      2 * layer.thickness < rack.clearSpacing
        ? rackLosses(rack, layer.thickness, approachVelocity, factor)
        : undefined,
  };
}

/** The same blockage by three formulas; the first is the one that the costs use. */
function rackLosses(rack: Rack, thickness: number, velocity: number, factor: number): RackLosses {
  const blocked = blockedShare(rack, thickness);
  const bars = {
    angle: rack.angle,
    barThickness: rack.barThickness + 2 * thickness,
    clearSpacing: rack.clearSpacing - 2 * thickness,
  };
  return {
    blocked,
    meusburger: meusburgerLoss({ blockedShare: blocked, angle: rack.angle }, factor, velocity),
    kirschmer: kirschmerLoss(bars, factor, velocity),
    reclamation: reclamationLoss(1 - blocked, velocity),
  };
}
