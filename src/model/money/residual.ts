/** Equipment that is bought in `firstYear` of the horizon and again whenever its life is over. */
export interface Equipment {
  readonly price: number;
  /** Years, above 0; it need not be whole. */
  readonly life: number;
  /** Year of the horizon of the first purchase, at that year's start. */
  readonly firstYear: number;
}

/** What two sums of lives may differ by, years. */
const roundingError = 1e-9;

/** Times of purchase in years from the start of year 1, before the horizon's end. */
export function purchaseTimes({ life, firstYear }: Equipment, horizon: number): number[] {
  if (!(life > 0)) throw new RangeError(`equipment with a life of ${life} years; allowed: above 0`);
  const served = horizon - (firstYear - 1);
  const count = Math.max(0, Math.ceil(served / life - roundingError));
  return Array.from({ length: count }, (_, index) => firstYear - 1 + index * life);
}

/** Years of the horizon in which equipment is bought, the first and the replacements; a year stands twice for a life below a year. */
export function purchaseYears(equipment: Equipment, horizon: number): number[] {
  return purchaseTimes(equipment, horizon).map((time) => Math.floor(time + roundingError) + 1);
}

/**
 * Worth of the last purchase at the horizon's end, by straight line: price × years of life left over its life. Worn
 * out, it is worth nothing (no salvage value). Prices are constant: a replacement costs what the first did.
 */
export function residualValue(equipment: Equipment, horizon: number): number {
  const last = purchaseTimes(equipment, horizon).at(-1);
  if (last === undefined) return 0;
  const left = last + equipment.life - horizon;
  return (equipment.price * Math.max(0, left)) / equipment.life;
}
