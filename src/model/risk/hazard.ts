/** What leads from fouled arrivals to a yearly chance of establishment. */
export interface HazardParameters {
  /** α: chance that one fouled arrival founds a population in wholly suitable water. */
  readonly establishmentPerArrival: number;
  /** c: 1 for independent arrivals, above 1 for an Allee effect (Leung and others 2004). */
  readonly shape: number;
  /** Yearly chance by ways that no boat check stops. */
  readonly otherPathways: number;
}

/**
 * Yearly chance of establishment, h = 1 − exp(−(α F w)^c)·(1 − o): fouled arrivals F in water of suitability w,
 * joined with the chance o by other pathways as an independent cause. Form: Leung and others 2004.
 */
export function yearlyHazard(arrivals: number, suitability: number, parameters: HazardParameters): number {
  const { establishmentPerArrival, shape, otherPathways } = parameters;
  const pressure = (establishmentPerArrival * arrivals * suitability) ** shape;
  return 1 - Math.exp(-pressure) * (1 - otherPathways);
}
