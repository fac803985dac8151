import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { StudyReading } from "../../app/study-reading.js";
import { UnknownStudyError } from "../../store/errors.js";
import { revisionParameter } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { differences } from "./schemas.js";
import { sentFields } from "./sent-fields.js";

const latest = revisionParameter.optional().meta({ description: "The latest if left out" });

/** Two studies or revisions beside each other. */
export function comparisonOperation({
  studies,
  answers,
}: Pick<OperationParts, "studies" | "answers">): Operation {
  return operation({
    method: "get",
    path: "/api/comparison",
    operationId: "compareStudies",
    summary: "What differs between two complete studies or revisions, in inputs and in results",
    parameters: noParameters,
    query: sentFields({
      left: z.string().meta({ description: "Id of a study" }),
      leftRevision: latest,
      right: z.string().meta({ description: "Id of the same study or of another" }),
      rightRevision: latest,
      explained: z
        .enum(["true", "false"])
        .default("false")
        .meta({ description: "true also tells how much each changed input explains; takes seconds" }),
    }),
    body: noBody,
    reply: differences,
    answer: async ({ query, signal }) => {
      const left = entryAt(studies, query.left, query.leftRevision);
      const right = entryAt(studies, query.right, query.rightRevision);
      const names = { left: left.name, right: right.name };
      const asked = { left: textOf(left), right: textOf(right), names };
      const kind = query.explained === "true" ? "explanation" : "differences";
      const { json } = await answers.ask(kind, asked, signal);
      return { reply: { left: sideOf(left), right: sideOf(right), ...json } };
    },
  });
}

function entryAt(studies: StudyReading, id: string, revision: number | undefined): StudyEntry {
  const entry = revision === undefined ? studies.find(id) : studies.revision(id, revision);
  if (!entry) throw new UnknownStudyError(id);
  return entry;
}

const sideOf = ({ id, revision, name }: StudyEntry) => ({ id, revision, name });
