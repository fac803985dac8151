import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import type { Assumption } from "../../assumptions/entry.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import { overrideOperations } from "./override-operations.js";
import { assumptionReply } from "./schemas.js";

/** Assumptions, and a study's own values in their place. */
export function assumptionOperations(studies: Studies): Operation[] {
  return [
    operation({
      method: "get",
      path: "/api/assumptions",
      operationId: "listAssumptions",
      summary: "Every assumption with its range, basis and source",
      parameters: noParameters,
      query: noParameters,
      body: noBody,
      reply: z.array(assumptionReply),
      answer: () => {
        const { entries, sources } = studies.assumptions;
        const withCitation = (entry: Assumption) => ({
          ...entry,
          citation: sources.get(entry.source)?.citation ?? "",
        });
        return { reply: [...entries.values()].map(withCitation) };
      },
    }),
    ...overrideOperations(studies),
  ];
}
