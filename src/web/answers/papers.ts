import { completedIssue, preparedIssue } from "../../issue/make-issue.js";
import { NotIssuedError, readIssue } from "../../issue/read-issue.js";
import { verifyIssue } from "../../issue/verify.js";
import { finishPrint } from "../../report/finished-pdf.js";
import type { AnswersOf, Means } from "./means.js";
import { toldRuns } from "./told-runs.js";

/** What has to do with printed and issued reports. */
export function papers(
  means: Means,
): AnswersOf<"packed" | "issueToPrint" | "issued" | "digestOfIssue" | "verification"> {
  const toldRun = toldRuns(means, 1);
  return {
    packed: ({ pdf, told }) => finishPrint(pdf, told),
    issueToPrint: (asked) => preparedIssue(asked.draft, { ...toldRun(asked), files: means.files }),
    issued: ({ printed, ...prepared }) => completedIssue(prepared, printed),
    digestOfIssue: ({ pdf }) => digestOfIssue(pdf),
    verification: ({ pdf, kept }) => verifyIssue(pdf, { kept: () => kept }),
  };
}

async function digestOfIssue(pdf: Uint8Array): Promise<string | undefined> {
  try {
    return (await readIssue(pdf)).record.digest;
  } catch (error) {
    if (error instanceof NotIssuedError) return undefined;
    throw error;
  }
}
