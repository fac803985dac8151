/** What one boat takes one inspector: a quick check for each, and a full inspection as well if it is set aside. */
export interface ServiceTimes {
  readonly quickCheckHours: number;
  readonly fullInspectionHours: number;
  /** Share of boats that are set aside for a full inspection. */
  readonly setAsideShare: number;
  /** Each of the two times: exponential about its mean, or always the same. */
  readonly spread: "exponential" | "constant";
}

/** Mean time per boat, E[S] = q + p f, with quick check q, full inspection f and set-aside share p. */
export function meanServiceHours({
  quickCheckHours,
  fullInspectionHours,
  setAsideShare,
}: ServiceTimes): number {
  return quickCheckHours + setAsideShare * fullInspectionHours;
}

/**
 * Mean square of the time per boat, h²: E[S²] = k q² + p (2 q f + k f²), where k = 2 for exponential times
 * (E[X²] = 2 E[X]²) and 1 for constant ones.
 */
export function meanSquareServiceHours(service: ServiceTimes): number {
  const { quickCheckHours: quick, fullInspectionHours: full, setAsideShare, spread } = service;
  const factor = spread === "exponential" ? 2 : 1;
  return factor * quick ** 2 + setAsideShare * (2 * quick * full + factor * full ** 2);
}

/** Squared coefficient of variation, E[S²]/E[S]² − 1: 1 for an exponential time, 0 for a constant one. */
export function squaredVariation(service: ServiceTimes): number {
  return meanSquareServiceHours(service) / meanServiceHours(service) ** 2 - 1;
}
