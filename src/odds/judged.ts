import type { AssumptionSet } from "../assumptions/entry.js";
import { judgedSwings, type Swing } from "../study/judged-swings.js";
import type { StudyDocument } from "../study/schema.js";
import { oddsSettings } from "../study/uncertainty-schema.js";
import type { WorkerPool } from "./pool.js";

/** Swings of a study's judged assumptions, worked out by the workers. @throws InputError; OddsError */
export async function judgedBy(
  pool: WorkerPool,
  document: StudyDocument,
  assumptions: AssumptionSet,
  signal: AbortSignal,
): Promise<Swing[]> {
  const study = { document, settings: oddsSettings(document.study.uncertainty) };
  const { inputs } = await pool.ask(study, "plan", {}, signal);
  return judgedSwings(document, assumptions, inputs, (points) =>
    Promise.all(points.map((point) => pool.ask(study, "netBenefits", { point }, signal))),
  );
}
