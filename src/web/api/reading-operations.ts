import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { linkedStudy } from "./addresses.js";
import { studyIn, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import { state, studyCard, studyReply } from "./schemas.js";
import { sentFields } from "./sent-fields.js";

/** Listing and reading studies. */
export function readingOperations(studies: Studies): Operation[] {
  return [
    operation({
      method: "get",
      path: "/api/studies",
      operationId: "listStudies",
      summary: "The studies in one state, the last saved first; the examples are among the active ones",
      parameters: noParameters,
      query: sentFields({ state: state.default("active") }),
      body: noBody,
      reply: z.array(studyCard),
      answer: ({ query }) => ({
        reply: (query.state === "active" ? studies.list() : studies.inState(query.state)).map(linkedStudy),
      }),
    }),
    operation({
      method: "get",
      path: "/api/studies/{id}",
      operationId: "readStudy",
      summary: "A study in any state: its file, the file as JSON, and what is missing or wrong",
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: studyReply,
      isTagged: true,
      answer: ({ parameters }) => {
        const entry = studyIn(studies, parameters.id);
        return { reply: wholeStudy(studies, entry), entry };
      },
    }),
    operation({
      method: "get",
      path: "/api/studies/{id}/text",
      operationId: "readStudyFile",
      summary: "The study file to the byte",
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: z.string(),
      text: "text/plain",
      isTagged: true,
      answer: ({ parameters }) => {
        const entry = studyIn(studies, parameters.id);
        return { reply: entry.text, entry };
      },
    }),
  ];
}

/** A study with its file, and what is missing or wrong in it. */
export function wholeStudy(studies: Studies, entry: StudyEntry) {
  return { ...linkedStudy(entry), text: entry.text, ...studies.check(entry) };
}
