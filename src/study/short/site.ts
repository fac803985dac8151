import { mapped, type Range, rangeOf } from "./amount-text.js";
import type { Where } from "./climate.js";
import type { IntakeFacts, ShortFacts } from "./facts-schema.js";
import { type Filling, rangeOr } from "./filling.js";

/** Levels and place of the lake, in metres; what structures are hung on. */
export interface Site {
  readonly where: Where;
  readonly levels: { readonly summer: number; readonly winter: Range };
  /** The higher of summer and winter. */
  readonly highest: number;
  /** The lowest level that there may be. */
  readonly minimum: number;
  readonly bottom: number;
  /** How far the lake may fall below its level in summer. */
  readonly fall: number;
}

/** An intake that takes water all year is covered all year, too, by the level that nobody told. */
const mostFall = ({ depth, use }: IntakeFacts, cover: number): number[] =>
  depth && use !== "irrigation" ? [Math.max(0, rangeOf(depth).low - cover)] : [];

/** A lake is deeper than it falls, by this many metres at least. */
const leastWater = 1;

export function siteOf(facts: ShortFacts, { typical }: Filling): Site {
  const summer = rangeOr(facts.summerLevel, typical("typical.elevation")).value;
  const cover = typical("typical.submergence").value;
  const most = Math.min(...facts.intakes.flatMap((intake) => mostFall(intake, cover)));
  const drawdown = mapped(typical("typical.drawdown"), (each) => Math.min(each, most));
  const winter = facts.winterLevel
    ? rangeOf(facts.winterLevel)
    : { low: summer - drawdown.high, value: summer - drawdown.value, high: summer - drawdown.low };
  const depth = rangeOr(facts.depth, typical("typical.lake-depth")).value;
  const summerRange = facts.summerLevel ? rangeOf(facts.summerLevel) : { low: summer, high: summer };
  const margin = typical("typical.level-margin").value;
  const underIntake = ({ depth: known }: IntakeFacts) =>
    known && !facts.depth ? [summer - rangeOf(known).high - leastWater] : [];
  const minimum = Math.min(summerRange.low, winter.low) - margin;
  return {
    where: { latitude: facts.place ?? typical("typical.latitude").value, elevation: summer },
    levels: { summer, winter },
    highest: Math.max(summerRange.high, winter.high),
    minimum,
    bottom: Math.min(summer - depth, minimum - leastWater, ...facts.intakes.flatMap(underIntake)),
    fall: Math.max(0, summer - winter.low),
  };
}
