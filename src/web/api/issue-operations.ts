import { z } from "zod";
import { issueReport } from "../../app/issuing.js";
import type { ListedIssue } from "../../store/records.js";
import { printedIssue } from "../pages/issue-routes.js";
import { studyAddress } from "./addresses.js";
import { authorQuery, ownStudyIn, studyIn, studyPath } from "./found.js";
import { noBody, noParameters, type Operation, operation } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { issueCard } from "./schemas.js";

/** Reports that are frozen with all that they were made from. */
export function issueOperations(parts: OperationParts): Operation[] {
  const { studies, issuing, drawn } = parts;
  return [
    operation({
      method: "get",
      path: "/api/studies/{id}/issues",
      operationId: "listIssues",
      summary: "Issued reports of a study, the latest first",
      parameters: studyPath,
      query: noParameters,
      body: noBody,
      reply: z.array(issueCard),
      answer: ({ parameters }) => ({
        reply: issuing.issues.list(studyIn(studies, parameters.id).id).map(linkedIssue),
      }),
    }),
    operation({
      method: "post",
      path: "/api/studies/{id}/issues",
      operationId: "issueReport",
      summary: "Issue the report on a complete study as it is, with its odds",
      parameters: studyPath,
      query: authorQuery.extend({
        note: z.string().max(500).default("").meta({ description: "What it is issued for" }),
      }),
      body: noBody,
      status: 201,
      reply: issueCard,
      answer: async ({ parameters: { id }, query: { author, note }, signal }) => {
        const entry = ownStudyIn(studies, id);
        const odds = await drawn(entry, signal);
        const issue = await issueReport(
          { entry, author, note },
          { ...issuing, make: (draft, sign) => printedIssue({ draft, odds, sign }, parts) },
        );
        return {
          reply: linkedIssue({ ...issue, hasBoardPart: issue.boardPdf !== null }),
          location: `${studyAddress(id)}/issues`,
        };
      },
    }),
  ];
}

function linkedIssue({ studyId, number, issuedAt, author, note, revision, ...rest }: ListedIssue) {
  const { studyName, engineVersion, seed, digest, hasBoardPart } = rest;
  return {
    ...{ studyId, number, issuedAt, author, note, revision, studyName, engineVersion, seed, digest },
    links: {
      pdf: `/studies/${studyId}/issues/${number}.pdf`,
      ...(hasBoardPart ? { boardPart: `/studies/${studyId}/issues/${number}-board-part.pdf` } : {}),
    },
  };
}
