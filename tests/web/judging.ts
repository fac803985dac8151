import { drawnStudy } from "../../src/study/draws.js";
import { judgedSwings } from "../../src/study/judged-swings.js";
import { netBenefitsAt } from "../../src/study/matters-points.js";
import type { StudyDocument } from "../../src/study/schema.js";
import { comparedOptions } from "../../src/study/stop-drawing.js";
import { oddsSettings } from "../../src/study/uncertainty-schema.js";
import { assumptions as usual } from "../report/runs.js";

/** Judges in this thread, without workers. */
export function judgeHere(assumptions = usual) {
  return (document: StudyDocument) => {
    const drawn = drawnStudy(document, assumptions, oddsSettings(document.study.uncertainty));
    const compared = comparedOptions(document);
    return judgedSwings(document, assumptions, drawn.inputs, async (points) =>
      points.map((point) => netBenefitsAt(drawn, compared, point)),
    );
  };
}
