import type { AssumptionSet } from "../../assumptions/entry.js";
import { lakesPerBlock } from "../../model/futures/draw-plan.js";
import type { StudyDocument } from "../format/schema.js";
import { oddsSettings } from "../format/uncertainty-schema.js";
import { type DrawnStudy, drawnStudy, type LakeFutures } from "./draws.js";
import type { Odds } from "./odds.js";
import type { OddsSettings } from "./odds-settings.js";
import { oddsSummary } from "./odds-summary.js";
import { blocksToDo, type ComparedOptions, comparedOptions } from "./stop-drawing.js";

/** Draws a study and tells what its futures say; what matters among its inputs is worked out elsewhere. */
export function studyOdds(
  document: StudyDocument,
  assumptions: AssumptionSet,
  settings: OddsSettings = oddsSettings(document.study.uncertainty),
): Omit<Odds, "matters"> {
  const drawn = drawnStudy(document, assumptions, settings);
  const { lakes, end } = drawUntil(drawn, comparedOptions(document), settings);
  return oddsSummary({ document, drawn, settings }, lakes, end);
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
