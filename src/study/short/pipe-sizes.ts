import { pipeArea, pipeHeadLoss } from "../../model/hydraulics/friction.js";
import { mapped } from "./amount-text.js";
import type { Filling, TypicalId } from "./filling.js";
import { TypicalValue } from "./typical-value.js";

/** The bore in which a flow runs at a velocity. */
export const boreFor = (flow: number, velocity: number): number => Math.sqrt(flow / velocity / pipeArea(1));

/** The side of a square through which a flow runs at a velocity. */
export const squareFor = (flow: number, velocity: number): number => Math.sqrt(flow / velocity);

interface Line {
  readonly length: number;
  readonly diameter: number;
  readonly roughness: TypicalId;
  readonly minorLoss: number;
}

/** Head that a clean line takes at a flow. */
export function lossOf(line: Line, flow: number, { typical, viscosity }: Filling): number {
  return pipeHeadLoss({ ...line, roughness: typical(line.roughness).value }, flow, viscosity);
}

/** What a rack needs besides its width and height. */
export interface RackEntries {
  readonly velocity: TypicalId;
  readonly velocityLimit: TypicalId;
  readonly headLossLimit: TypicalId;
  readonly spacing: TypicalId;
}

/** The fewest openings across a rack, however small its flow. */
const leastOpenings = 3;

/** A rack for the largest flow that there may be; one too small for typical bars has smaller ones, as a strainer has. */
export function rackFor(flow: number, entries: RackEntries, filling: Filling): object {
  const { ranged, single, typical, amount } = filling;
  const across = leastOpenings * inMetres(typical(entries.spacing).high);
  const side = squareFor(flow, typical(entries.velocity).value);
  const scale = Math.min(1, Math.max(typical("typical.strainer-scale").value, side / across));
  const height = Math.max(side, scale * across);
  const width = mapped(typical(entries.velocity), (velocity) =>
    Math.max(flow / velocity / height, scale * across),
  );
  const scaled = (millimetres: number) => scale * inMetres(millimetres);
  return {
    width: amount(entries.velocity, width, "length"),
    height: single(entries.velocity, "length", () => height),
    barThickness: ranged("typical.bar-thickness", "smallLength", scaled),
    clearSpacing: ranged(entries.spacing, "smallLength", scaled),
    barDepth: ranged("typical.bar-depth", "smallLength", scaled),
    barShape: new TypicalValue("typical.bar-depth", "rectangular"),
    angle: ranged("typical.rack-angle", "angle"),
    headLossLimit: ranged(entries.headLossLimit, "length"),
    velocityLimit: ranged(entries.velocityLimit, "speed"),
  };
}

const millimetresInMetre = 1000;
export const inMetres = (millimetres: number): number => millimetres / millimetresInMetre;
