import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { runQuestion } from "../pages/odds-routes.js";
import { askFigures } from "../pages/with-odds.js";
import { comparisonOperation } from "./comparison-operation.js";
import { studyIn, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { odds, results } from "./schemas.js";
import { sentStudyOperations } from "./sent-study-operations.js";

/** What a study's figures are made of and what comes out. */
export function resultOperations(parts: OperationParts): Operation[] {
  const { studies, knownOdds } = parts;
  return [
    ...sentStudyOperations(parts),
    operation({
      method: "get",
      path: "/api/studies/{id}/results",
      operationId: "readResults",
      summary: "All results of a complete study",
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: results,
      answer: async ({ parameters, signal }) => {
        const find = () => studyIn(studies, parameters.id);
        const askedOf = (entry: StudyEntry) => ({ ...textOf(entry), odds: knownOdds(entry) });
        const latest = { study: parameters.id, find, askedOf };
        const { answer } = await askFigures(parts, latest, signal);
        return { reply: JSON.parse(Buffer.from(answer).toString()) };
      },
    }),
    oddsOperation(parts),
    comparisonOperation(parts),
  ];
}

const progress = z.object({ done: z.int(), planned: z.int() }).meta({ description: "Draws of the lake" });

const drawing = z.discriminatedUnion("state", [
  z.object({ state: z.literal("drawing"), progress }),
  z.object({ state: z.literal("waiting"), before: z.int().meta({ description: "Studies drawn first" }) }),
]);

/** How sure a study is: the first request starts the drawing, which ends where nobody asks for half a minute. */
function oddsOperation({ studies, runs }: Pick<OperationParts, "studies" | "runs">): Operation {
  return operation({
    method: "get",
    path: "/api/studies/{id}/odds",
    operationId: "readOdds",
    summary: "How sure a complete study is, drawn when first asked for",
    parameters: studyPath,
    query: noParameters,
    body: noBody,
    reply: odds,
    underWay: drawing,
    answer: ({ parameters }) => {
      const state = runs.ask(runQuestion(studyIn(studies, parameters.id), studies));
      if (state.state === "done") return { reply: { ...state.result } };
      return {
        underWay: state.state === "drawing" ? { state: state.state, progress: state.progress } : state,
      };
    },
  });
}
