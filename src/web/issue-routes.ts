import express, { type Express } from "express";
import multer from "multer";
import { z } from "zod";
import { verifyIssue } from "../issue/verify.js";
import { linkedAssets } from "../report/html.js";
import type { ToldOdds } from "../report/odds-words.js";
import type { IssueCard } from "../store/issues.js";
import { withFilePolicy } from "./access/security-headers.js";
import { mayOnlyRead } from "./access/visitor.js";
import { NotFoundError } from "./explain.js";
import { type IssueParts, issueReport } from "./issue-desk.js";
import { renderPage } from "./render.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";
import { workbenchPage } from "./workbench-page.js";

interface IssueRoutes extends IssueParts {
  readonly shelf: StudyShelf;
  readonly find: (id: string | undefined) => ShelfEntry;
  readonly knownOdds: (entry: ShelfEntry) => ToldOdds | undefined;
}

const text = z.string().trim().max(500).catch("");
const issueForm = z.object({ author: text, note: text });

/** Larger than any issued report: one of 300 structures has some 4 MB. */
const largestPdfBytes = 24 * 1024 * 1024;

/** Issued reports of a study, issuing, and verification of any file. */
export function addIssues(app: Express, parts: IssueRoutes): void {
  const { issues, shelf, find, knownOdds } = parts;
  app.get("/studies/:id/issues", (request, response) => {
    const entry = find(request.params.id);
    const frame = { entry, balance: shelf.balance(entry), part: "issues", title: "Issued reports" };
    const list = issues.list(entry.id);
    const content = {
      issues: list.map((each, index) => issueView(each, list[index - 1])),
      isExample: entry.isExample,
      mayIssue: !entry.isExample && !mayOnlyRead(),
      hasOdds: !entry.isExample && frame.balance.line !== undefined && knownOdds(entry) !== undefined,
      action: `/studies/${entry.id}/issues`,
      odds: `/studies/${entry.id}/odds`,
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
      const told = knownOdds(entry);
      await issueReport({ entry, run: shelf.run(entry), told, author, note }, parts);
      response.redirect(303, `/studies/${entry.id}/issues`);
    },
  );
  app.get("/studies/:id/issues/:file", (request, response) => {
    const { id, file } = request.params;
    const number = /^(\d{1,9})\.pdf$/.exec(file)?.[1];
    const found = number === undefined ? undefined : issues.find(id, Number(number));
    if (!found) throw new NotFoundError();
    withFilePolicy(response, "pdf")
      .type("pdf")
      .set("Content-Disposition", `inline; filename="${id}-issue-${found.number}.pdf"`)
      .send(Buffer.from(found.pdf));
  });
  addVerification(app, parts);
}

function addVerification(app: Express, { issues }: IssueParts): void {
  const upload = multer({
    storage: multer.memoryStorage(),
    limits: { fileSize: largestPdfBytes, files: 1, fields: 0 },
  });
  const page = (result: object | undefined) =>
    renderPage("verify", { title: "Verify an issued report", assets: linkedAssets, result });
  app.get("/verify", (_request, response) => {
    response.send(page(undefined));
  });
  app.post("/verify", upload.single("report"), async (request, response) => {
    const kept = (digest: string) => issues.withDigest(digest)?.pdf;
    response.send(page(await verifyIssue(request.file?.buffer ?? new Uint8Array(), { kept })));
  });
}

/** @param later the issue after it, if there is one */
function issueView(issue: IssueCard, later: IssueCard | undefined) {
  const { studyId, number, issuedAt, author, note, revision, digest, engineVersion, seed } = issue;
  return {
    number,
    href: `/studies/${studyId}/issues/${number}.pdf`,
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
