import { isJudged } from "../../src/assumptions/entry-marks.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { oddsSettings } from "../../src/study/format/uncertainty-schema.js";
import { assumptionSwings, type Swing } from "../../src/study/odds/assumption-swings.js";
import { drawnStudy } from "../../src/study/odds/draws.js";
import { netBenefitsAt } from "../../src/study/odds/sensitivity-points.js";
import { comparedOptions } from "../../src/study/odds/stop-drawing.js";
import { assumptions as usual } from "../report/runs.js";

/** Judges in this thread, without workers. */
export function judgeHere(assumptions = usual) {
  return (document: StudyDocument) => {
    const drawn = drawnStudy(document, assumptions, oddsSettings(document.study.uncertainty));
    const compared = comparedOptions(document);
    return assumptionSwings(document, assumptions, drawn.inputs, async (points) =>
      points.map((point) => netBenefitsAt(drawn, compared, point)),
    );
  };
}

const judged = new Map<string, ReturnType<typeof assumptionSwings>>();

/** The same with the shipped assumptions, each study once for all tests: pages ask for it time and again. */
export function judgeOnce(document: StudyDocument): ReturnType<typeof assumptionSwings> {
  const key = JSON.stringify(document);
  const swings = judged.get(key) ?? judgeHere()(document);
  judged.set(key, swings);
  return swings;
}

/** Swings of any study at once, where what is judged is not looked at: all figures are invented, the widest first. */
export const inventedSwings = async (): Promise<Swing[]> =>
  [...usual.entries.values()].filter(isJudged).map(({ id }, place, { length }) => ({
    ...{ id, width: 1000 * (length - place) },
    ...{ low: -400 * (length - place), high: 600 * (length - place) },
  }));
