import { mapped, type Range } from "./amount-text.js";
import type { Filling } from "./filling.js";
import { season } from "./season.js";

/** Where a lake is. */
export interface Where {
  /** Degrees, below 0 south of the equator. */
  readonly latitude: number;
  /** Metres above the sea. */
  readonly elevation: number;
}

const metresInKilometre = 1000;
/** The latitude for which the entries of the air stand. */
const entryLatitude = 40;
const halfYear = 6;

/** The month of a peak, counted from 1, on either half of the earth. */
export const peakAt = ({ latitude }: Where, month: number): number =>
  latitude < 0 ? month + halfYear : month;

/** Mean of the air in each month, as far as place and height tell it. */
export function airOf(where: Where, { typical }: Filling): (month: number) => Range {
  const north = Math.abs(where.latitude) - entryLatitude;
  const colder =
    typical("typical.air-mean-by-latitude").value * north +
    (typical("typical.air-lapse").value * where.elevation) / metresInKilometre;
  const swing = Math.max(
    0,
    typical("typical.air-swing").value + typical("typical.air-swing-by-latitude").value * north,
  );
  const peak = peakAt(where, typical("typical.air-peak").value);
  return (month) =>
    mapped(typical("typical.air-mean"), (mean) => mean - colder + swing * (2 * season(month, peak) - 1));
}

/** Temperatures of the surface in its coldest and its warmest month. */
export interface SurfaceEnds {
  readonly coldest: number;
  readonly warmest: Range;
}

/** The surface freezes, and none is warmer than this. */
const bounds = { least: 0, most: 34 };
/** Degrees by which the warmest month is above the coldest at the least. */
const leastSwing = 1;

/** @param entered of the warmest month */
export function surfaceEnds(where: Where, entered: Range | undefined, filling: Filling): SurfaceEnds {
  const air = airOf(where, filling);
  const means = Array.from({ length: 12 }, (_, month) => air(month).value);
  const coldest = Math.max(filling.typical("typical.water-coldest").value, Math.min(...means));
  const least = coldest + leastSwing;
  const warmest =
    entered ??
    mapped(filling.typical("typical.water-above-air"), (above) =>
      Math.min(bounds.most, Math.max(least, Math.max(...means) + above)),
    );
  return { coldest: Math.min(coldest, Math.max(bounds.least, warmest.low - leastSwing)), warmest };
}

/** The surface in a month, by the warmest month. */
export const surfaceIn = ({ coldest, warmest }: SurfaceEnds, month: number, peak: number): Range =>
  mapped(warmest, (top) => coldest + (top - coldest) * season(month, peak));

/** The deep water in a month, by the share of the surface's warming that reaches it. */
export const deepIn = ({ coldest, warmest }: SurfaceEnds, month: number, peak: number, share: Range): Range =>
  mapped(share, (each) => coldest + each * (warmest.value - coldest) * season(month, peak));
