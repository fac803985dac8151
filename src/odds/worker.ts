import { parentPort, workerData } from "node:worker_threads";
import type { AssumptionSet } from "../assumptions/entry.js";
import { type DrawnStudy, drawnStudy } from "../study/odds/draws.js";
import { oddsSummary } from "../study/odds/odds-summary.js";
import { netBenefitsAt } from "../study/odds/sensitivity-points.js";
import { comparedOptions } from "../study/odds/stop-drawing.js";
import { InputError } from "../study/reading/problems.js";
import type { Question, Reply, Request, StudyToDraw } from "./messages.js";
import { standBack } from "./stand-back.js";

/** Answers questions about the last study that it was sent, one after another. */
const assumptions: AssumptionSet = workerData;
/** Pages and their figures come first. */
const niceness = 10;
standBack(niceness);
let known: { study: StudyToDraw; drawn: DrawnStudy } | undefined;

function answered({ study, question }: Request): { reply: Reply; moved: ArrayBuffer[] } {
  if (study) known = { study, drawn: drawnStudy(study.document, assumptions, study.settings) };
  if (!known) throw new Error("a question came before its study");
  return answerTo(question, known);
}

function answerTo(
  question: Question,
  { study, drawn }: { study: StudyToDraw; drawn: DrawnStudy },
): { reply: Reply; moved: ArrayBuffer[] } {
  switch (question.kind) {
    case "lake": {
      const answer = drawn.futures(question.block, question.lake);
      const { expected, cost, establishment, infested, byYear } = answer;
      const lists = [...expected, ...cost, ...establishment, ...infested, ...byYear];
      const moved = lists.map(({ buffer }) => buffer).filter((buffer) => buffer instanceof ArrayBuffer);
      return { reply: { kind: "answer", answer }, moved };
    }
    case "summary": {
      const answer = oddsSummary({ ...study, drawn }, question.lakes, question.end);
      return { reply: { kind: "answer", answer }, moved: [] };
    }
    case "plan":
      return { reply: { kind: "answer", answer: drawn.plan }, moved: [] };
    case "netBenefits": {
      const answer = netBenefitsAt(drawn, comparedOptions(study.document), question.point);
      return { reply: { kind: "answer", answer }, moved: [] };
    }
  }
}

parentPort?.on("message", (request: Request) => {
  try {
    const { reply, moved } = answered(request);
    parentPort?.postMessage(reply, moved);
  } catch (error) {
    if (request.study) known = undefined;
    const message = error instanceof Error ? error.message : String(error);
    const problems = error instanceof InputError ? error.problems : [];
    parentPort?.postMessage({ kind: "failure", message, problems } satisfies Reply);
  }
});
