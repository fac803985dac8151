import type { AssumptionSet } from "../../assumptions/entry.js";
import { isJudged } from "../../assumptions/entry-marks.js";
import type { StudyDocument } from "../format/schema.js";
import type { TornadoBar } from "./odds.js";
import type { RunPoints } from "./sensitivity-points.js";
import { barWidth, tornado } from "./tornado.js";
import type { NamedInput } from "./uncertain-inputs.js";

/** How much one assumption moves the net benefit of the requested option. */
export interface Swing {
  readonly id: string;
  /** From the least to the greatest net benefit with it at its P10, as it is, and at its P90. */
  readonly width: number;
  readonly low: number;
  readonly high: number;
}

/** Bars of the odds as swings, those of assumptions that pass. */
export function swingsOf(
  bars: readonly TornadoBar[],
  netBenefit: number,
  isWanted: (id: string) => boolean,
): Swing[] {
  return bars
    .filter(({ id }) => isWanted(id))
    .map((bar) => ({
      id: bar.id,
      width: barWidth(bar, netBenefit),
      low: Math.min(bar.low.netBenefit, bar.high.netBenefit),
      high: Math.max(bar.low.netBenefit, bar.high.netBenefit),
    }));
}

/**
 * Swings of the judged assumptions that a study uses and has no own value for, the widest first: each at its P10 and
 * its P90 by the whole model, all else as assumed. What moves nothing is left out.
 * @param inputs what the study draws
 * @param run works out some hundred lakes
 */
export async function judgedSwings(
  { overrides }: Pick<StudyDocument, "overrides">,
  { entries }: Pick<AssumptionSet, "entries">,
  inputs: readonly NamedInput[],
  run: RunPoints,
): Promise<Swing[]> {
  const own = new Set(overrides.map(({ id }) => id));
  const judged = new Set([...entries.values()].filter(isJudged).map(({ id }) => id));
  const isWanted = (id: string) => judged.has(id) && !own.has(id);
  const wanted = inputs.filter(({ id }) => isWanted(id));
  const { bars, netBenefit } = await tornado(wanted, [], run);
  return swingsOf(bars, netBenefit, isWanted);
}
