import { textOf } from "../../app/answers/questions.js";
import { comparisonOperation } from "./comparison-operation.js";
import { studyIn, studyPath } from "./found.js";
import { oddsOperation } from "./odds-operation.js";
import { noBody, noParameters, type Operation, operation, studyBody } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { checkReply, results, studyDocument } from "./schemas.js";

/** What a study's figures are made of and what comes out. */
export function resultOperations(parts: OperationParts): Operation[] {
  const { shelf, answers } = parts;
  return [
    operation({
      method: "post",
      path: "/api/check",
      operationId: "checkStudy",
      summary: "What is missing or wrong in a study file; nothing is kept",
      parameters: noParameters,
      query: noParameters,
      body: studyBody(studyDocument),
      reply: checkReply,
      answer: ({ body }) => {
        const { problems } = shelf.check({ text: body, fileName: "The request" });
        return { reply: { complete: problems.length === 0, problems } };
      },
    }),
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
        const figures = await answers.ask("figures", textOf(studyIn(shelf, parameters.id)), signal);
        return { reply: JSON.parse(Buffer.from(figures).toString()) };
      },
    }),
    oddsOperation(parts),
    comparisonOperation(parts),
  ];
}
