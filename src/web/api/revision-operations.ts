import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import { UnknownStudyError } from "../../store/errors.js";
import { linkedRevision } from "./addresses.js";
import { matchedRevision } from "./entity-tag.js";
import { authorQuery, cardIn, ownStudyIn, revisionPath, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import { wholeStudy } from "./reading-operations.js";
import { revisionCard, revisionReply, studyReply } from "./schemas.js";

/** Earlier revisions, for reading and to have again. */
export function revisionOperations(studies: Studies): Operation[] {
  return [
    operation({
      method: "get",
      path: "/api/studies/{id}/revisions",
      operationId: "listRevisions",
      summary: "All revisions of a study, the newest first",
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: z.array(revisionCard),
      answer: ({ parameters }) => {
        const { id } = cardIn(studies, parameters.id);
        return { reply: studies.revisions(id).map(linkedRevision) };
      },
    }),
    operation({
      method: "get",
      path: "/api/studies/{id}/revisions/{revision}",
      operationId: "readRevision",
      summary: "A revision with its file",
      parameters: revisionPath,
      query: noParameters,
      body: noBody,
      reply: revisionReply,
      answer: ({ parameters: { id, revision } }) => {
        const found = studies.revision(id, revision);
        if (!found) throw new UnknownStudyError(id);
        return { reply: { ...linkedRevision(found), text: found.text } };
      },
    }),
    operation({
      method: "post",
      path: "/api/studies/{id}/revisions/{revision}/restore",
      operationId: "restoreRevision",
      summary: "Save an earlier revision's file as the next revision",
      parameters: revisionPath,
      query: authorQuery,
      body: noBody,
      needsMatch: true,
      reply: studyReply,
      isTagged: true,
      answer: ({ parameters: { id, revision }, query, match }) => {
        const expected = expectedRevision(studies, id, match);
        const entry = studies.restore(id, revision, expected, query.author);
        return { reply: wholeStudy(studies, entry), entry };
      },
    }),
  ];
}

/** A damaged revision has no tag that a writer could have read: "*" alone stands for it. */
function expectedRevision(studies: Studies, id: string, match: string | undefined): number {
  const { isDamaged, revision } = cardIn(studies, id);
  return isDamaged && match?.trim() === "*" ? revision : matchedRevision(match, ownStudyIn(studies, id));
}
