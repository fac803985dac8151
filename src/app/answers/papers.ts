import { completedPart, preparedIssue } from "../../issue/make-issue.js";
import { finishPrint } from "../../report/print/finished-pdf.js";
import type { AnswerContext, AnswersOf } from "./answer-context.js";
import { reportRuns } from "./report-runs.js";

/** What has to do with printed and issued reports. */
export function papers(context: AnswerContext): AnswersOf<"packed" | "issueToPrint" | "issuedPart"> {
  const reportRun = reportRuns(context, 1);
  return {
    packed: ({ pdf, description }) => finishPrint(pdf, description),
    issueToPrint: (asked) => preparedIssue(asked.draft, { ...reportRun(asked), files: context.files }),
    issuedPart: completedPart,
  };
}
