import type { Studies } from "../../app/studies.js";
import { assumptionOperations } from "./assumption-operations.js";
import { issueOperations } from "./issue-operations.js";
import { keepingOperations } from "./keeping-operations.js";
import type { Operation } from "./operation.js";
import type { OperationParts } from "./operation-parts.js";
import { readingOperations } from "./reading-operations.js";
import { resultOperations } from "./result-operations.js";
import { revisionOperations } from "./revision-operations.js";
import { writingOperations } from "./writing-operations.js";

/** All that programs can ask, under headings. */
export interface OperationGroup {
  readonly title: string;
  readonly operations: readonly Operation[];
}

export const operationGroups = (parts: OperationParts): OperationGroup[] => groupsOf(parts, parts.studies);

const groupsOf = (parts: OperationParts, studies: Studies): OperationGroup[] => [
  { title: "Studies", operations: [...readingOperations(studies), ...writingOperations(parts)] },
  { title: "Revisions", operations: revisionOperations(studies) },
  { title: "Copies, archive and deletion", operations: keepingOperations(studies) },
  { title: "Checks and results", operations: resultOperations(parts) },
  { title: "Issued reports", operations: issueOperations(parts) },
  { title: "Assumptions", operations: assumptionOperations(studies) },
];
