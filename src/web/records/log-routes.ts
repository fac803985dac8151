import type { Express, Request, Response } from "express";
import type { Answer } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { logEdits } from "../../editor/log-edits.js";
import { edited } from "../../editor/study-text.js";
import { InputError, problemsOf } from "../../study/reading/problems.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { type LogForm, logFormOf, logMappingOf, sentLog } from "./log-form.js";
import { showLogs } from "./logs-page.js";
import { exportUpload, tooLarge, type WaitingFiles } from "./waiting-files.js";

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

/** Logs of inspected boats: read by columns that are mapped once, and kept as sums by season and class. */
export function addLogs(app: Express, parts: Parts, files: WaitingFiles): void {
  app.get("/studies/:id/records/boats", (request, response) => {
    const entry = parts.find(request.params.id);
    const { document } = draftOf(entry.text, entry.fileName);
    return showLogs(response, parts, {
      entry,
      form: logFormOf(document, authorOf(request)),
    });
  });
  app.post(
    "/studies/:id/records/boats",
    exportUpload,
    tooLarge,
    async (request: Request, response: Response) => {
      const entry = parts.find(String(request.params.id));
      if (entry.isExample) throw new NotFoundError();
      const form = sentForm(request);
      rememberAuthor(response, form.author);
      const found = files.sent(request, form.upload);
      if ("problem" in found) {
        const shown = {
          entry,
          form: { ...form, upload: "" },
          problem: found.problem,
        };
        await showLogs(response.status(400), parts, shown);
        return;
      }
      const mapping = logMappingOf(form);
      const { document } = draftOf(entry.text, entry.fileName);
      const tried = await parts.answers.ask("logTried", {
        file: found.text,
        mapping,
        document,
      });
      const changes = changesOf(document, { form, tried, name: found.name });
      const answered = JSON.stringify([mapping, form.stations]);
      if (form.act === "keep" && changes && found.shown === answered) {
        keep(response, parts, {
          entry,
          form,
          tried,
          edits: changes.edits,
          name: found.name,
        });
        return;
      }
      files.show(found, answered);
      await showLogs(response, parts, {
        ...{
          entry,
          tried,
          name: found.name,
          form: { ...form, upload: found.token },
          changes: changes?.told ?? [],
        },
        changed: form.act === "keep" && changes !== undefined,
      });
    },
  );
}

function sentForm(request: Request): LogForm {
  const parsed = sentLog.safeParse(request.body ?? {});
  if (parsed.success) return parsed.data;
  throw new InputError("The form", problemsOf(parsed.error.issues, request.body));
}

interface Read {
  readonly form: LogForm;
  readonly tried: Answer<"logTried">;
  readonly name: string;
}

/** What the sums change in the study, and what that does. */
const changesOf = (document: unknown, { form, tried: { sums, mapping }, name }: Read) =>
  sums &&
  mapping &&
  logEdits(document, {
    ...{ sums, mapping, fileName: name, stations: form.stations },
    origin: form.origin === "" ? undefined : form.origin,
  });

interface Kept extends Read {
  readonly entry: StudyEntry;
  readonly edits: ReturnType<typeof logEdits>["edits"];
}

function keep(response: Response, { studies }: Parts, { entry, form, tried, edits, name }: Kept): void {
  const leftOut = tried.refusedCount === 0 ? "" : `, without ${tried.refusedCount} of its lines`;
  studies.save(entry.id, entry.revision, edited(entry.text, edits), {
    ...{
      author: form.author,
      note: `Log of boats from ${name}${leftOut}`,
      origin: "form",
    },
  });
  response.redirect(303, `/studies/${entry.id}/records/boats`);
}
