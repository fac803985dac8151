import type { Measure, PlanNumberIds } from "../register/plan-numbers.js";

/** What fouls as a whole; each kind is offered the plans that the catalogue lists for it. */
export const partKinds = ["rack", "conduit", "penstock", "service-line", "hull"] as const;
export type PartKind = (typeof partKinds)[number];

/** What every entry of the catalogue of protection plans says; the texts are for the reader of the report. */
interface PlanText {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly PartKind[];
  /** Months between the cleanings or treatments that go with it; 0 for none. */
  readonly intervals: readonly number[];
  readonly sideEffects: string;
  readonly permits: string;
  readonly cautions: string;
}

/** An entry of one mechanism, with the ids of the numbers that the mechanism reads. */
export interface PlanBy<By extends Measure> extends PlanText {
  readonly measure: By;
  readonly numbers: PlanNumberIds<By>;
}

/** One entry of the catalogue of protection plans. */
export type PlanEntry = { [By in Measure]: PlanBy<By> }[Measure];

/** An entry by which something is installed. */
export type InstalledPlan = Extract<PlanEntry, { readonly numbers: { readonly capital: unknown } }>;

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
