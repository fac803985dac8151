import { z } from "zod";
import type { StudyShelf } from "../study-shelf.js";
import { studyIn, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import { assumptionReply, overrideReply } from "./schemas.js";

/** Assumptions, and a study's own values in their place. */
export function assumptionOperations(shelf: StudyShelf): Operation[] {
  const { entries, sources } = shelf.assumptions;
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
      answer: () => ({
        reply: [...entries.values()].map((entry) => ({
          ...entry,
          citation: sources.get(entry.source)?.citation ?? "",
        })),
      }),
    }),
    operation({
      method: "get",
      path: "/api/studies/{id}/overrides",
      operationId: "listOverrides",
      summary: "Own values of a complete study in place of assumptions",
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: z.array(overrideReply),
      isTagged: true,
      answer: ({ parameters }) => {
        const entry = studyIn(shelf, parameters.id);
        const { overrides } = shelf.run(entry);
        const reply = overrides.map(({ entry: { id, value, unit }, text, reason }) => ({
          ...{ id, value: text, reason },
          ...{ usual: value, unit },
        }));
        return { reply, entry };
      },
    }),
  ];
}
