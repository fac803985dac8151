import type { Spread } from "../../units/spread.js";
import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { rangedIn, withValues } from "../reading/ranged.js";
import type { RecordReaders } from "../reading/record-readers.js";
import { contradictions } from "./consistency.js";
import type { SoundParts } from "./sound-parts.js";

/** Ends of a range, or choices, with which the rest of the study would be contradictory. */
export function rangeProblems(document: WrittenStudy, readers: RecordReaders): Contradiction[] {
  return rangedIn(document, [], []).flatMap(({ path, quantity }) => {
    const broken = endsOf(quantity.spread).flatMap((value) =>
      contradictions(soundParts(withValues(document, [{ path, value }])), readers),
    );
    const [first] = broken;
    if (!first) return [];
    return [
      {
        path,
        found: `"${quantity.text}", which would lead to ${first.found}`,
        allowed: `a range all of whose values are possible: ${first.allowed}`,
        remedy: "Narrow the range, or give one value.",
      },
    ];
  });
}

/** The least and the largest value that is drawn for certain; a lognormal or normal range has no end. */
export function endsOf(spread: Spread): number[] {
  if (spread.kind !== "discrete") return [spread.low, spread.high];
  const values = spread.choices.map(({ value }) => value);
  return [Math.min(...values), Math.max(...values)];
}

export function soundParts(document: WrittenStudy): SoundParts {
  return { ...document, structures: document.structures.map((value, index) => ({ index, value })) };
}
