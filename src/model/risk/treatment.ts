import type { Assumed } from "../assumed.js";

/** Price of treating a volume of open water against mussels, as published by volume. */
export const treatmentCost = (cubicMetres: number, source: Assumed): number =>
  cubicMetres * source("response.treatment-price");
