import { z } from "zod";
import type { SweepAsked } from "../../app/answers/questions.js";
import { sweepCsv } from "../../forms/sweep-csv.js";
import { jsonBody, noParameters, type Operation, operation, studyBody } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { checkReply, results, studyDocument } from "./schemas.js";
import { sweepReply, sweepRequest } from "./sweep-schemas.js";

/** What programs ask of a study that they send: nothing of it is kept. */
export function sentStudyOperations({
  studies,
  answers,
}: Pick<OperationParts, "studies" | "answers">): Operation[] {
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
        const { problems } = studies.check({ text: body, fileName: "The request" });
        return { reply: { complete: problems.length === 0, problems } };
      },
    }),
    operation({
      method: "post",
      path: "/api/results",
      operationId: "computeStudy",
      summary: "All results of a study file, at central values; nothing is kept",
      parameters: noParameters,
      query: noParameters,
      body: studyBody(studyDocument),
      reply: results,
      answer: async ({ body, signal }) => {
        const asked = { text: body, fileName: "The request", odds: undefined };
        const figures = await answers.ask("figures", asked, signal);
        return { reply: JSON.parse(Buffer.from(figures).toString()) };
      },
    }),
    operation({
      method: "post",
      path: "/api/sweep",
      operationId: "sweepStudy",
      summary: "Every option of a study that is sent at each combination of some values; nothing is kept",
      parameters: noParameters,
      query: noParameters,
      body: jsonBody(sweepRequest),
      reply: sweepReply,
      answer: async ({ body, signal }) => ({ reply: await answers.ask("sweep", sweepAsked(body), signal) }),
    }),
    operation({
      method: "post",
      path: "/api/sweep/csv",
      operationId: "sweepStudyAsCsv",
      summary: "The same as CSV, a line for each option at each point",
      parameters: noParameters,
      query: noParameters,
      body: jsonBody(sweepRequest),
      reply: z.string(),
      text: "text/csv",
      answer: async ({ body, signal }) => ({
        reply: sweepCsv(await answers.ask("sweep", sweepAsked(body), signal)),
      }),
    }),
  ];
}

const sweepAsked = ({ study, set }: z.output<typeof sweepRequest>): SweepAsked => ({
  text: typeof study === "string" ? study : JSON.stringify(study),
  fileName: "The request",
  values: set,
});
