import type { Layer } from "../../../src/model/mussels/layer.js";
import type { Component, LimitLoad } from "../../../src/model/structures/component.js";
import { NearestLimit } from "../../../src/model/structures/limits.js";

/** The limit that a layer comes nearest to in a month. */
export function nearestLimit({ limit }: Pick<Component, "limit">, layer: Layer, month: number): LimitLoad {
  const nearest = new NearestLimit();
  limit(nearest.meet, layer, month);
  return nearest;
}

/** The limit that a layer passes in a month, in words; undefined if none. */
export function brokenLimit(component: Component, layer: Layer, month: number): string | undefined {
  const { limit, load } = nearestLimit(component, layer, month);
  return load > 1 ? limit.broken : undefined;
}
