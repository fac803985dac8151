import type { IssueParts } from "../../app/issuing.js";
import type { RunDesk } from "../../app/runs.js";
import type { StudyShelf } from "../../app/studies.js";
import type { Odds } from "../../study/odds/odds.js";
import type { StudyPages } from "../pages/study-pages.js";
import { assumptionOperations } from "./assumption-operations.js";
import { issueOperations } from "./issue-operations.js";
import { keepingOperations } from "./keeping-operations.js";
import type { Operation } from "./operation.js";
import { readingOperations } from "./reading-operations.js";
import { resultOperations } from "./result-operations.js";
import { revisionOperations } from "./revision-operations.js";
import { writingOperations } from "./writing-operations.js";

/** All that programs can ask, under headings. */
export interface OperationGroup {
  readonly title: string;
  readonly operations: readonly Operation[];
}

/** Where operations find studies and what comes out of them. */
export interface OperationParts extends StudyPages {
  readonly desk: RunDesk<Odds>;
  readonly issuing: Pick<IssueParts, "issues" | "now" | "key">;
}

export const operationGroups = (parts: OperationParts): OperationGroup[] => groupsOf(parts, parts.shelf);

const groupsOf = (parts: OperationParts, shelf: StudyShelf): OperationGroup[] => [
  { title: "Studies", operations: [...readingOperations(shelf), ...writingOperations(parts)] },
  { title: "Revisions", operations: revisionOperations(shelf) },
  { title: "Copies, archive and deletion", operations: keepingOperations(shelf) },
  { title: "Checks and results", operations: resultOperations(parts) },
  { title: "Issued reports", operations: issueOperations(parts) },
  { title: "Assumptions", operations: assumptionOperations(shelf) },
];
