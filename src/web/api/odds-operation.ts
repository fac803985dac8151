import { z } from "zod";
import { runQuestion } from "../pages/odds-routes.js";
import { studyIn, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { odds } from "./schemas.js";

const progress = z.object({ done: z.int(), planned: z.int() }).meta({ description: "Draws of the lake" });

const drawing = z.discriminatedUnion("state", [
  z.object({ state: z.literal("drawing"), progress }),
  z.object({ state: z.literal("waiting"), before: z.int().meta({ description: "Studies drawn first" }) }),
]);

/** How sure a study is: the first request starts the drawing, which ends where nobody asks for half a minute. */
export function oddsOperation({ shelf, desk }: Pick<OperationParts, "shelf" | "desk">): Operation {
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
      const state = desk.ask(runQuestion(studyIn(shelf, parameters.id), shelf));
      return state.state === "done" ? { reply: { ...state.result } } : { underWay: state };
    },
  });
}
