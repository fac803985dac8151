import type { Studies } from "../../app/studies.js";
import type { StudyState } from "../../store/records.js";
import { linkedStudy, studyAddress } from "./addresses.js";
import { authorQuery, revisionParameter, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import { wholeStudy } from "./reading-operations.js";
import { studyCard, studyReply } from "./schemas.js";

/** Copies, and the states of a study. */
export function keepingOperations(studies: Studies): Operation[] {
  const moving = (
    method: "post" | "delete",
    ending: string,
    action: { readonly operationId: string; readonly summary: string; readonly state: StudyState },
  ) =>
    operation({
      method,
      path: `/api/studies/{id}${ending}`,
      operationId: action.operationId,
      summary: action.summary,
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: studyCard,
      isTagged: true,
      answer: ({ parameters }) => {
        const entry = studies.setState(parameters.id, action.state);
        return { reply: linkedStudy(entry), entry };
      },
    });
  return [
    operation({
      method: "post",
      path: "/api/studies/{id}/copy",
      operationId: "copyStudy",
      summary: "A new study from a study or an example",
      parameters: studyPath,
      query: authorQuery.extend({
        revision: revisionParameter.optional().meta({ description: "The latest if left out" }),
      }),
      body: noBody,
      status: 201,
      reply: studyReply,
      isTagged: true,
      answer: ({ parameters, query: { author, revision } }) => {
        const entry = studies.copy(parameters.id, author, revision);
        return { reply: wholeStudy(studies, entry), entry, location: studyAddress(entry.id) };
      },
    }),
    moving("post", "/archive", {
      operationId: "archiveStudy",
      summary: "Put a study into the archive",
      state: "archived",
    }),
    moving("post", "/recover", {
      operationId: "recoverStudy",
      summary: "Take a study out of the archive, or recover a deleted one",
      state: "active",
    }),
    moving("delete", "", {
      operationId: "deleteStudy",
      summary: "Delete a study; it can be recovered",
      state: "deleted",
    }),
  ];
}
