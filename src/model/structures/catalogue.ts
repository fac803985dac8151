/** What fouls as a whole; each kind is offered the plans that the catalogue lists for it. */
export const partKinds = ["rack", "conduit", "penstock", "service-line", "hull"] as const;
export type PartKind = (typeof partKinds)[number];

/** The mechanism of a plan: how it keeps a surface clean, or mussels off it. */
export const measures = [
  "leave",
  "clean",
  "dry",
  "trigger",
  "coating",
  "oxidant-season",
  "oxidant-end",
  "filter",
  "heat",
  "second-line",
] as const;
export type Measure = (typeof measures)[number];

/**
 * One entry of the catalogue of protection plans; the texts are for the reader of the report.
 */
export interface PlanEntry {
  readonly id: string;
  readonly name: string;
  readonly measure: Measure;
  readonly parts: readonly PartKind[];
  /** Name of its numbers: assumptions under `plan.<numbers>.`. */
  readonly numbers: string;
  /** Months between the cleanings or treatments that go with it; 0 for none. */
  readonly intervals: readonly number[];
  readonly sideEffects: string;
  readonly permits: string;
  readonly cautions: string;
}

/** A plan that the engineer prescribes for a part, whatever the costs say. */
export interface PinnedPlan {
  readonly part: string;
  readonly plan: string;
  readonly reason: string;
}

/** Name of one plan of an entry: "divers-12", or the entry's own id where no interval goes with it. */
export function planId(entry: Pick<PlanEntry, "id">, intervalMonths: number): string {
  return intervalMonths === 0 ? entry.id : `${entry.id}-${intervalMonths}`;
}
