import type { AssumptionSet } from "../../../src/assumptions/entry.js";
import { lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { oddsSettings } from "../../../src/study/format/uncertainty-schema.js";
import { type DrawnStudy, drawnStudy, type LakeFutures } from "../../../src/study/odds/draws.js";
import { inputsTold } from "../../../src/study/odds/inputs-told.js";
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
  const { lakes, end } = drawUntil(drawn, comparedOptions(document), settings);
  return { ...oddsSummary({ document, drawn, settings }, lakes, end), ...inputsTold(drawn, lakes) };
}

/** Draws block after block until the stop rule is content. */
function drawUntil(
  { futures }: DrawnStudy,
  compared: ComparedOptions,
  settings: OddsSettings,
): { lakes: LakeFutures[]; end: Odds["end"] } {
  const lakes: LakeFutures[] = [];
  for (;;) {
    const next = blocksToDo(lakes, compared, settings);
    if ("end" in next) return { lakes, end: next.end };
    const first = lakes.length / lakesPerBlock;
    for (let block = first; block < first + next.blocks; block++) {
      for (let lake = 0; lake < lakesPerBlock; lake++) lakes.push(futures(block, lake));
    }
  }
}
