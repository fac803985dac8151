import { completedIssue, preparedIssue } from "../../issue/make-issue.js";
import { finishPrint } from "../../report/print/finished-pdf.js";
import type { AnswersOf, Means } from "./means.js";
import { toldRuns } from "./told-runs.js";

/** What has to do with printed and issued reports. */
export function papers(means: Means): AnswersOf<"packed" | "issueToPrint" | "issued"> {
  const toldRun = toldRuns(means, 1);
  return {
    packed: ({ pdf, told }) => finishPrint(pdf, told),
    issueToPrint: (asked) => preparedIssue(asked.draft, { ...toldRun(asked), files: means.files }),
    issued: ({ printed, ...prepared }) => completedIssue(prepared, printed),
  };
}
