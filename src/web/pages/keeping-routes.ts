import express, { type Express } from "express";
import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import type { StudyState } from "../../store/records.js";
import { authorOf } from "../author.js";
import { NotFoundError } from "../explain.js";
import { formIn } from "../sent-form.js";

const author = z.string().trim().max(200, "at most 200 characters").optional();
const revisionNumber = z.coerce.number().int().min(1, "the number of a revision");

const copyForm = z.object({ author });
const versionName = z.object({ name: z.string().trim().max(100, "at most 100 characters").default("") });
const restoreForm = z.object({ author, expected: revisionNumber });

/** Copies, the archive, deletion with recovery, and earlier revisions again. */
export function addKeeping(app: Express, studies: Studies): void {
  const form = express.urlencoded({ extended: false, limit: "10kb" });
  app.post("/studies/:id/copy", form, (request, response) => {
    const { author } = formIn(copyForm, request.body);
    response.redirect(303, `/studies/${studies.copy(request.params.id, author ?? authorOf(request)).id}`);
  });
  app.post("/studies/:id/revisions/:revision/restore", form, (request, response) => {
    const { author, expected } = formIn(restoreForm, request.body);
    const { id } = request.params;
    studies.restore(id, numberIn(request.params.revision), expected, author ?? authorOf(request));
    response.redirect(303, `/studies/${id}`);
  });
  for (const way of ["undo", "redo"] as const) {
    app.post(`/studies/:id/${way}`, form, (request, response) => {
      const { author, expected } = formIn(restoreForm, request.body);
      const { id } = studies.step(request.params.id, way, expected, author ?? authorOf(request));
      response.redirect(303, pageBefore(request.get("referer"), id));
    });
  }
  app.post("/studies/:id/revisions/:revision/name", form, (request, response) => {
    const { name } = formIn(versionName, request.body);
    const { id, revision } = request.params;
    studies.nameVersion(id, numberIn(revision), name);
    response.redirect(303, `/studies/${id}/revisions`);
  });
  app.get("/studies/:id/revisions/:revision/study", (request, response) => {
    const { id } = request.params;
    const entry = studies.revision(id, numberIn(request.params.revision));
    if (!entry) throw new NotFoundError();
    response
      .type("text")
      .set("Content-Disposition", `attachment; filename="${id}-revision-${entry.revision}.yaml"`)
      .send(entry.text);
  });
  const moving = (verb: string, state: StudyState, next: (id: string) => string) =>
    app.post(`/studies/:id/${verb}`, (request, response) => {
      response.redirect(303, next(studies.setState(request.params.id, state).id));
    });
  moving("archive", "archived", () => "/");
  moving("delete", "deleted", () => "/");
  moving("recover", "active", (id) => `/studies/${id}`);
}

/** The page of the study on which a button was pressed; a structure that is there no more has its list. */
function pageBefore(referer: string | undefined, id: string): string {
  const path = referer !== undefined && URL.canParse(referer) ? new URL(referer).pathname : "";
  const home = `/studies/${id}/edit/names`;
  return path.startsWith(`/studies/${id}/`) ? path : home;
}

/** A revision's number from an address. @throws NotFoundError */
export function numberIn(text: string): number {
  const parsed = revisionNumber.safeParse(text);
  if (!parsed.success) throw new NotFoundError();
  return parsed.data;
}
