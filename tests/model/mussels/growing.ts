import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations, levelsOfYear } from "../../../src/model/lake/levels.js";
import { type ColonySurface, clean } from "../../../src/model/mussels/cohorts.js";
import { deadlyByMonth, dryingParameters } from "../../../src/model/mussels/drying.js";
import { grownMonths, layerAt } from "../../../src/model/mussels/grown-months.js";
import { type GrowthParameters, growthParameters } from "../../../src/model/mussels/growth.js";
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
    deadly: deadlyByMonth(lake, growth.drying),
  });
  return { months, table: shellTable(months, growth) };
}

interface GrowthInput {
  readonly surface: ColonySurface;
  /** One value per month. */
  readonly density: readonly number[];
  /** Month of the year, 0 to 11, of the first value; January if left out. */
  readonly firstMonth?: number;
  /** True for a month at whose end the surface is cleaned. */
  readonly cleanAfter?: (month: number, layer: Layer) => boolean;
}

/** The layer at the end of each month from bare on, before any cleaning. */
export function growLayers(
  { surface, density, firstMonth = 0, cleanAfter }: GrowthInput,
  parameters: GrowthParameters,
): Layer[] {
  const sinceJanuary = [...Array<number>(firstMonth).fill(0), ...density];
  const grown = grownMonths(
    { surface, density: sinceJanuary, start: firstMonth },
    parameters,
    density.length,
  );
  return density.map((_, month) => {
    const layer = layerAt(grown, month);
    if (cleanAfter?.(month, layer)) clean(grown.colony);
    return layer;
  });
}
