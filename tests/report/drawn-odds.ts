import { at } from "../../src/lists.js";
import { lakesPerBlock } from "../../src/model/futures/draw-plan.js";
import type { PrintedOdds } from "../../src/report/odds/odds-words.js";
import { printableOdds } from "../../src/report/odds/printed-odds.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { oddsSettings } from "../../src/study/format/uncertainty-schema.js";
import { type DrawnStudy, drawnStudy, type LakeFutures } from "../../src/study/odds/draws.js";
import { inputsTold } from "../../src/study/odds/inputs-told.js";
import { joinedFutures } from "../../src/study/odds/joined-futures.js";
import { leastBlocks } from "../../src/study/odds/odds-settings.js";
import { oddsSummary } from "../../src/study/odds/odds-summary.js";
import { sensitivityOf } from "../../src/study/odds/sensitivity.js";
import { netBenefitsAt } from "../../src/study/odds/sensitivity-points.js";
import { rankCorrelations } from "../../src/study/odds/sensitivity-ranks.js";
import { comparedOptions } from "../../src/study/odds/stop-drawing.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { keptInRun } from "../kept-in-run.js";
import { exampleNames } from "../study/example.js";
import { assumptions, exampleDocument } from "./runs.js";

/** Inputs that get a bar: more take long. */
const bars = 4;

const known = new WeakMap<StudyRun, Promise<PrintedOdds>>();

/** Odds of a run by the fewest futures, drawn in this thread, once for all tests. */
export function fewOdds(run: StudyRun): Promise<PrintedOdds> {
  const odds = known.get(run) ?? drawnOdds(run);
  known.set(run, odds);
  return odds;
}

async function drawnOdds(run: StudyRun): Promise<PrintedOdds> {
  const { document } = run;
  const { drawn, futures, summary } = fewest(document);
  const compared = comparedOptions(document);
  const { expected } = at(futures.options, compared.requested);
  const benefits = at(futures.options, compared.baseline).expected.map(
    (cost, future) => cost - at(expected, future),
  );
  const matters = await sensitivityOf(
    drawn.plan,
    rankCorrelations(drawn.plan, benefits),
    async (points) => points.map((point) => netBenefitsAt(drawn, compared, point)),
    bars,
  );
  return printableOdds(run, { ...summary, matters });
}

/** The fewest futures of a study, and what they say. */
export function fewest(document: StudyDocument) {
  const settings = oddsSettings(document.study.uncertainty);
  const drawn = drawnStudy(document, assumptions, settings);
  const lakes = lakesOf(document, drawn);
  const futures = joinedFutures(lakes);
  const summary = {
    ...oddsSummary({ document, settings, drawn }, futures, "cap"),
    ...inputsTold(drawn, futures),
  };
  return { drawn, lakes, futures, summary };
}

/** Those of an example take seconds, and several files look at them. */
function lakesOf(document: StudyDocument, { futures }: DrawnStudy): LakeFutures[] {
  const example = exampleNames.find((name) => document === exampleDocument(name));
  const draw = () =>
    Array.from({ length: leastBlocks * lakesPerBlock }, (_, lake) =>
      futures(Math.floor(lake / lakesPerBlock), lake % lakesPerBlock),
    );
  return example === undefined ? draw() : keptInRun(`fewest-lakes-${example}`, draw);
}
