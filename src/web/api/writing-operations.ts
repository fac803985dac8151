import { z } from "zod";
import type { StudyShelf } from "../study-shelf.js";
import { studyAddress } from "./addresses.js";
import { matchedRevision } from "./entity-tag.js";
import { authorQuery, ownStudyIn, studyPath } from "./found.js";
import { noParameters, type Operation, operation, studyBody } from "./operation.js";
import { wholeStudy } from "./reading-operations.js";
import { studyDocument, studyReply } from "./schemas.js";

const writingQuery = authorQuery.extend({
  note: z.string().max(500).default("").meta({ description: "What was changed" }),
  draft: z
    .enum(["true", "false"])
    .default("false")
    .meta({ description: "true keeps the study although it is not complete" }),
});

/** Making and saving studies. */
export const writingOperations = (shelf: StudyShelf): Operation[] => [creating(shelf), saving(shelf)];

function creating(shelf: StudyShelf): Operation {
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
    answer: ({ query: { author, note, draft }, body }) => {
      const writer = { author, note, origin: "api" } as const;
      const entry = draft === "true" ? shelf.create(body, writer) : shelf.add(body, "The request", writer);
      return { reply: wholeStudy(shelf, entry), entry, location: studyAddress(entry.id) };
    },
  });
}

function saving(shelf: StudyShelf): Operation {
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
    answer: ({ parameters: { id }, query: { author, note, draft }, body, match }) => {
      const expected = matchedRevision(match, ownStudyIn(shelf, id));
      if (draft === "false") shelf.run({ text: body, fileName: "The request" });
      const entry = shelf.save(id, expected, body, { author, note, origin: "api" });
      return { reply: wholeStudy(shelf, entry), entry };
    },
  });
}
