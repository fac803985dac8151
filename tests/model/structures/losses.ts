import type { Layer } from "../../../src/model/mussels/layer.js";
import type { Component, Priced, Tell } from "../../../src/model/structures/component.js";

/** What a layer costs a part in a month, as lines. */
export function lossesOf(
  part: Pick<Component, "losses"> | undefined,
  layer: Layer,
  month: number,
  upstream?: number,
): Priced[] {
  return toldLines((tell) => part?.losses(tell, layer, month, upstream));
}

/** What is told, as lines. */
export function toldLines(telling: (tell: Tell) => void): Priced[] {
  const lines: Priced[] = [];
  telling((charge, quantity) => lines.push({ ...charge, quantity }));
  return lines;
}
