import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations, levelsOfYear } from "../../../src/model/lake/levels.js";
import { dryingParameters } from "../../../src/model/mussels/drying.js";
import { growthParameters } from "../../../src/model/mussels/growth.js";
import { aloneOf, type Layer } from "../../../src/model/mussels/layer.js";
import { shellParameters } from "../../../src/model/mussels/shell.js";
import { shellTable } from "../../../src/model/mussels/shell-table.js";
import { type Place, settlementParameters, surfaceMonths } from "../../../src/model/mussels/surface.js";
import { assumed } from "../assumptions.js";
import { everyMonth } from "../near.js";

/** Growth of quagga mussels with the shipped assumptions, in water that suits them. */
export const growth = growthParameters(assumed, {
  shell: shellParameters(assumed),
  drying: dryingParameters("quagga", assumed),
  suitability: 1,
});

/** Layers as plain data, to compare: what a layer keeps is hidden in it. */
export const plain = (layers: readonly Layer[]) =>
  layers.map((layer) => Object.entries(aloneOf(layer)).map(([name, value]) => [name, value]));

/** A surface in still water under a lake's schedule of levels. */
export function stillSurface(place: Place, lake: Lake) {
  const levels = levelsOfYear(dailyElevations(lake.drawdown));
  const months = surfaceMonths({ place, velocity: everyMonth(0) }, lake, levels, {
    settlement: settlementParameters(lake, assumed),
    drying: growth.drying,
  });
  return { months, table: shellTable(months, growth.shell, growth.drying) };
}
