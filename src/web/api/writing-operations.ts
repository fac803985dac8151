import { z } from "zod";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { mustBeComplete } from "../pages/complete-study.js";
import { studyAddress } from "./addresses.js";
import { matchedRevision } from "./entity-tag.js";
import { authorQuery, ownStudyIn, studyPath } from "./found.js";
import { noParameters, type Operation, operation, studyBody } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { wholeStudy } from "./reading-operations.js";
import { studyDocument, studyReply } from "./schemas.js";

const writingQuery = authorQuery.extend({
  note: z
    .string()
    .max(500)
    .refine(isPrintable, allowedCharacters)
    .default("")
    .meta({ description: "What was changed" }),
  draft: z
    .enum(["true", "false"])
    .default("false")
    .meta({ description: "true keeps the study although it is not complete" }),
});

/** Making and saving studies. */
type WritingParts = Pick<OperationParts, "studies" | "answers">;

export const writingOperations = (parts: WritingParts): Operation[] => [creating(parts), saving(parts)];

function creating({ studies, answers }: WritingParts): Operation {
  return operation({
    method: "post",
    path: "/api/studies",
    operationId: "createStudy",
    summary: "Keep a study file as a new study",
    parameters: noParameters,
    query: writingQuery,
    body: studyBody(studyDocument),
    status: 201,
    reply: studyReply,
    isTagged: true,
    answer: async ({ query: { author, note, draft }, body }) => {
      const writer = { author, note, origin: "api" } as const;
      if (draft === "false") await mustBeComplete(answers, { text: body, fileName: "The request" });
      const entry = studies.create(body, writer);
      return { reply: wholeStudy(studies, entry), entry, location: studyAddress(entry.id) };
    },
  });
}

function saving({ studies, answers }: WritingParts): Operation {
  return operation({
    method: "put",
    path: "/api/studies/{id}",
    operationId: "saveStudy",
    summary: "Save a study file as the next revision",
    parameters: studyPath,
    query: writingQuery,
    body: studyBody(studyDocument),
    needsMatch: true,
    reply: studyReply,
    isTagged: true,
    answer: async ({ parameters: { id }, query: { author, note, draft }, body, match }) => {
      const expected = matchedRevision(match, ownStudyIn(studies, id));
      if (draft === "false") await mustBeComplete(answers, { text: body, fileName: "The request" });
      const entry = studies.save(id, expected, body, { author, note, origin: "api" });
      return { reply: wholeStudy(studies, entry), entry };
    },
  });
}
