import { withAgency } from "../../assumptions/agency.js";
import type { AssumptionSet } from "../../assumptions/entry.js";
import { at } from "../../lists.js";
import { valueAtShare } from "../../model/futures/draw-plan.js";
import type { StudyDocument } from "../format/schema.js";
import type { TornadoBar } from "./odds.js";
import { setOf } from "./sensitivity-moves.js";
import { netBenefitsOf, type RunPoints } from "./sensitivity-points.js";
import { barWidth, tornado } from "./tornado.js";
import type { NamedInput } from "./uncertain-inputs.js";

/** How much one assumption moves the net benefit of the requested option. */
export interface Swing extends Span {
  readonly id: string;
  /** From the least to the greatest net benefit with it at its P10, as it is, and at its P90. */
  readonly width: number;
  /** The same at the ends of its range; only of those that move it most. */
  readonly ends?: Span;
}

interface Span {
  readonly low: number;
  readonly high: number;
}

/** Swings whose ends are worked out: as many as a page shows. */
const mostWithEnds = 12;

function swingOf(bar: TornadoBar, netBenefit: number): Swing {
  return {
    id: bar.id,
    width: barWidth(bar, netBenefit),
    low: Math.min(bar.low.netBenefit, bar.high.netBenefit),
    high: Math.max(bar.low.netBenefit, bar.high.netBenefit),
  };
}

/**
 * Swings of the assumptions that a study uses and has no own value for, published or not, the widest first: each at its
 * P10 and its P90 by the whole model, the widest also at the ends of their ranges, all else as assumed. What moves
 * nothing is left out.
 * @param inputs what the study draws
 * @param run works out some hundred lakes
 */
export async function assumptionSwings(
  { overrides }: Pick<StudyDocument, "overrides">,
  { entries, agency }: Pick<AssumptionSet, "entries" | "agency">,
  inputs: readonly NamedInput[],
  run: RunPoints,
): Promise<Swing[]> {
  const own = new Set(withAgency(overrides, agency).map(({ id }) => id));
  const wanted = inputs.filter(({ id }) => entries.has(id) && !own.has(id));
  const { bars, netBenefit } = await tornado(wanted, [], run);
  const swings = bars.map((bar) => swingOf(bar, netBenefit));
  const widest = swings.slice(0, mostWithEnds).flatMap((swing) => {
    const input = wanted.find(({ id }) => id === swing.id);
    return input && hasEnds(input) ? [input] : [];
  });
  const found = await netBenefitsOf(
    widest.flatMap((input) => [0, 1].map((share) => setOf([[input, valueAtShare(input)(share)]]))),
    run,
  );
  const ends = new Map(
    widest.map(({ id }, index) => {
      const both = [at(found, 2 * index), at(found, 2 * index + 1)];
      return [id, { low: Math.min(...both), high: Math.max(...both) }];
    }),
  );
  return swings.map((swing) => {
    const known = ends.get(swing.id);
    return known ? { ...swing, ends: known } : swing;
  });
}

/** Whether a range ends: that of a normal or lognormal value is stated by its P10 and P90. */
const hasEnds = ({ distribution }: NamedInput): boolean =>
  distribution.kind !== "lognormal" && distribution.kind !== "truncated-normal";
