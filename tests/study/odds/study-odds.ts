import type { AssumptionSet } from "../../../src/assumptions/entry.js";
import { lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { oddsSettings } from "../../../src/study/format/uncertainty-schema.js";
import { type DrawnStudy, drawnStudy } from "../../../src/study/odds/draws.js";
import { inputsTold } from "../../../src/study/odds/inputs-told.js";
import { type DrawnFutures, joinedFutures, joinedParts } from "../../../src/study/odds/joined-futures.js";
import type { Odds } from "../../../src/study/odds/odds.js";
import type { OddsSettings } from "../../../src/study/odds/odds-settings.js";
import { oddsSummary } from "../../../src/study/odds/odds-summary.js";
import { blocksToDo, type ComparedOptions, comparedOptions } from "../../../src/study/odds/stop-drawing.js";

/** Draws a study in one process and tells what its futures say. */
export function studyOdds(
  document: StudyDocument,
  assumptions: AssumptionSet,
  settings: OddsSettings = oddsSettings(document.study.uncertainty),
): Omit<Odds, "matters"> {
  const drawn = drawnStudy(document, assumptions, settings);
  const { all, end } = drawUntil(drawn, comparedOptions(document), settings);
  return { ...oddsSummary({ document, drawn, settings }, all, end), ...inputsTold(drawn, all) };
}

/** Draws block after block until the stop rule is content. */
function drawUntil(
  { futures }: DrawnStudy,
  compared: ComparedOptions,
  settings: OddsSettings,
): { all: DrawnFutures; end: Odds["end"] } {
  const parts: DrawnFutures[] = [];
  for (;;) {
    const next = blocksToDo(parts, compared, settings);
    if ("end" in next) return { all: joinedParts(parts), end: next.end };
    for (const last = parts.length + next.blocks; parts.length < last; ) {
      const block = parts.length;
      parts.push(joinedFutures(Array.from({ length: lakesPerBlock }, (_, lake) => futures(block, lake))));
    }
  }
}
