import express, { type ErrorRequestHandler, type Express, type Request, type Response } from "express";
import multer from "multer";
import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import { type IssueParts, issueReport } from "../../app/issuing.js";
import { keptOf } from "../../app/kept-reports.js";
import { verifyInTurn } from "../../app/verify-in-turn.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { fileLimits } from "../../issue/file-limits.js";
import type { IssueDraft, MadeIssue, Press, PrintedPart } from "../../issue/make-issue.js";
import { linkedAssets } from "../../report/document/render-page.js";
import type { ListedIssue } from "../../store/records.js";
import type { Odds } from "../../study/odds/odds.js";
import { InputError } from "../../study/reading/problems.js";
import { withFilePolicy } from "../access/security-headers.js";
import { NotFoundError } from "../explain.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import { studyMenu } from "./study-menu.js";
import type { StudyPages } from "./study-pages.js";
import { workbenchPage } from "./workbench-page.js";

type IssueRoutes = StudyPages & Pick<IssueParts, "issues" | "now" | "key">;

const text = z.string().trim().max(500).catch("");
const issueForm = z.object({ author: text, note: text });

/** Issued reports of a study, issuing, and verification of any file. */
export function addIssues(app: Express, parts: IssueRoutes): void {
  const { issues, answers, find, drawn, now, key } = parts;
  app.get("/studies/:id/issues", async (request, response) => {
    const entry = find(request.params.id);
    const frame = {
      entry,
      balance: await answers.ask("balance", textOf(entry)),
      part: "issues",
      title: "Issued reports",
    };
    const list = issues.list(entry.id);
    const content = {
      study: entry.id,
      issues: list.map((each, index) => issueView(each, list[index - 1])),
      isExample: entry.isExample,
      mayIssue: !entry.isExample && !mayOnlyRead(),
      action: `/studies/${entry.id}/issues`,
      fingerprint: key.fingerprint(),
    };
    response.send(renderPage("issues", workbenchPage(frame, content)));
  });
  app.post(
    "/studies/:id/issues",
    express.urlencoded({ extended: false, limit: "10kb" }),
    async (request, response) => {
      const entry = find(request.params.id);
      if (entry.isExample) throw new NotFoundError();
      const { author, note } = issueForm.parse(request.body ?? {});
      const odds = await drawn(entry, readerSignal(response));
      const make: IssueParts["make"] = (draft, sign) => printedIssue({ draft, odds, sign }, parts);
      await issueReport({ entry, author, note }, { issues, now, key, make });
      response.redirect(303, `/studies/${entry.id}/issues`);
    },
  );
  app.get("/studies/:id/issues/:file", (request, response) => {
    const { id, file } = request.params;
    const [, number, part = ""] = /^(\d{1,9})(-board-part)?\.pdf$/.exec(file) ?? [];
    const found = number === undefined ? undefined : issues.find(id, Number(number));
    const pdf = part === "" ? found?.pdf : found?.boardPdf;
    if (!pdf) throw new NotFoundError();
    withFilePolicy(response, "pdf")
      .type("pdf")
      .set("Content-Disposition", `inline; filename="${id}-issue-${number}${part}.pdf"`)
      .send(Buffer.from(pdf));
  });
  addVerification(app, parts);
}

/** Printed, completed and signed, with its odds. @throws BrowserError, PrinterBusyError */
export async function printedIssue(
  { draft, odds, sign }: { readonly draft: IssueDraft; readonly odds: Odds; readonly sign: Press["sign"] },
  { answers, printer: { print } }: Pick<StudyPages, "answers" | "printer">,
): Promise<MadeIssue> {
  const { text, fileName } = draft.study;
  const prepared = await answers.ask("issueToPrint", { text, fileName, odds, draft });
  // Loaded when it is needed, as what signs.
  const { pressIssue } = await import("../../issue/make-issue.js");
  const complete = (printed: PrintedPart) => answers.ask("issuedPart", printed);
  return pressIssue(prepared, { print, complete, sign });
}

function addVerification(app: Express, { issues, key, studies }: IssueRoutes): void {
  const upload = multer({
    storage: multer.memoryStorage(),
    limits: { fileSize: fileLimits.bytes, files: 1, fields: 0 },
  });
  const verify = verifyInTurn();
  const page = (result: object | undefined, from: unknown) => {
    const study = typeof from === "string" ? studies.card(from) : undefined;
    return renderPage("verify", {
      menu: study && studyMenu(study.id, study.name),
      from: study?.id,
      title: "Verify an issued report",
      assets: linkedAssets,
      fingerprint: key.fingerprint(),
      result,
    });
  };
  app.get("/verify", ({ query }, response) => {
    response.send(page(undefined, query.from));
  });
  app.post("/verify", upload.single("report"), tooLarge, async (request: Request, response: Response) => {
    const pdf = new Uint8Array(request.file?.buffer ?? []);
    response.send(page(await verify(pdf, keptOf(issues, key, pdf)), request.query.from));
  });
}

/** What is sent to be verified is no study, whose limit is told elsewhere. */
const tooLarge: ErrorRequestHandler = (error: unknown, _request, _response, next) => {
  if (!(error instanceof multer.MulterError) || error.code !== "LIMIT_FILE_SIZE") return next(error);
  const allowed = `at most ${fileLimits.bytes / 1024 / 1024} MB; no issued report is larger`;
  const remedy = "Give the PDF as it was issued.";
  next(new InputError("The file", [{ path: "the file", found: "a larger file", allowed, remedy }]));
};

/** @param later the issue after it, if there is one */
function issueView(issue: ListedIssue, later: ListedIssue | undefined) {
  const { studyId, number, issuedAt, author, note, revision, digest, engineVersion, seed } = issue;
  return {
    number,
    href: `/studies/${studyId}/issues/${number}.pdf`,
    boardHref: issue.hasBoardPart ? `/studies/${studyId}/issues/${number}-board-part.pdf` : undefined,
    compare: `/compare?left=${studyId}@issue-${number}&right=${studyId}`,
    date: `${issuedAt.slice(0, 10)} ${issuedAt.slice(11, 16)} UTC`,
    author,
    note,
    revision,
    digest,
    engineVersion,
    odds: seed === null ? "without odds" : `odds of seed ${seed}`,
    standing: later ? `superseded by issue ${later.number}` : "the latest",
  };
}
