import type { Layer } from "../../../src/model/mussels/layer.js";
import type { Component, Priced } from "../../../src/model/structures/component.js";

/** What a layer costs a part in a month, as lines. */
export function lossesOf(
  part: Pick<Component, "losses"> | undefined,
  layer: Layer,
  month: number,
  upstream?: number,
): Priced[] {
  const lines: Priced[] = [];
  part?.losses((charge, quantity) => lines.push({ ...charge, quantity }), layer, month, upstream);
  return lines;
}
