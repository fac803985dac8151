import type { Express, Response } from "express";
import { patienceMilliseconds, within } from "../../app/answers/answer-in-time.js";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { type Form, formGroups } from "../../forms/form.js";
import { sizeText } from "../../forms/size.js";
import { BrowserError } from "../../report/print/browser.js";
import { editionText } from "../../report/print/paper.js";
import { withFilePolicy } from "../access/security-headers.js";
import { NotFoundError } from "../explain.js";
import { GoneFormError, slidesPath } from "../gone-form.js";
import { keptForms, type StudyForms } from "../kept-forms.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import type { StudyPages } from "./study-pages.js";
import { workbenchPage } from "./workbench-page.js";

/** Other forms of a study's answer: their list with sizes, and each of them. */
export function addForms(app: Express, { answers, printer, find, drawn }: StudyPages): void {
  const runs = keptForms(answers, printer);
  const formsOf = async (entry: StudyEntry, response: Response): Promise<StudyForms> => {
    const odds = await drawn(entry, readerSignal(response));
    return runs({ ...textOf(entry), odds, edition: editionText(entry) });
  };
  app.get("/studies/:id/forms", async (request, response) => {
    const entry = find(request.params.id);
    const { forms, missing, isUnderWay } = await readyForms(formsOf(entry, response));
    const frame = {
      entry,
      balance: await answers.ask("balance", textOf(entry)),
      part: "forms",
      title: "Downloads",
    };
    const address = `/studies/${entry.id}/forms`;
    const content = {
      groups: groupsOf(entry, forms),
      missing,
      isUnderWay,
      here: address,
      ready: `${address}.json`,
    };
    response.send(renderPage("forms", workbenchPage(frame, content)));
  });
  app.get("/studies/:id/forms.json", async (request, response) => {
    const entry = find(request.params.id);
    const { plain, printed } = await formsOf(entry, response);
    response.json({ groups: groupsOf(entry, [...(await plain()), ...(await printed())]) });
  });
  const sendForm = async (id: string, path: string, response: Response): Promise<void> => {
    const entry = find(id);
    if (path === slidesPath) throw new GoneFormError(entry.id);
    const forms = await formsOf(entry, response);
    const isPath = (form: Form) => form.path === path;
    const form = (await forms.plain()).find(isPath) ?? (await forms.printed()).find(isPath);
    if (!form) throw new NotFoundError();
    const way = /html|image|application\/pdf/.test(form.type) ? "inline" : "attachment";
    withFilePolicy(response, form.type)
      .type(form.type)
      .set("Content-Disposition", `${way}; filename="${id}-${path.replace("/", "-")}"`)
      .send(Buffer.from(form.bytes));
  };
  app.get("/studies/:id/forms/:file", ({ params }, response) => sendForm(params.id, params.file, response));
  app.get("/studies/:id/forms/:folder/:file", ({ params }, response) =>
    sendForm(params.id, `${params.folder}/${params.file}`, response),
  );
}

/** What is there soon: drawing takes seconds and goes on without a reader. Without a browser there is what needs none. */
async function readyForms(made: Promise<StudyForms>) {
  const ready = await within(patienceMilliseconds, made);
  if (ready === "under way") {
    made.catch(() => undefined);
    return { forms: [], missing: "", isUnderWay: true };
  }
  const { plain, printed } = ready.answer;
  const forms = await plain();
  try {
    const drawn = await within(patienceMilliseconds, printed());
    if (drawn === "under way") return { forms, missing: "", isUnderWay: true };
    return { forms: [...forms, ...drawn.answer], missing: "", isUnderWay: false };
  } catch (error) {
    if (!(error instanceof BrowserError)) throw error;
    return { forms, missing: error.message, isUnderWay: false };
  }
}

function groupsOf({ id }: StudyEntry, forms: readonly Form[]) {
  return formGroups
    .map((name) => ({
      name,
      forms: forms
        .filter(({ group }) => group === name)
        .map(({ path, title, bytes }) => ({
          href: `/studies/${id}/forms/${path}`,
          title,
          ending: path.slice(path.lastIndexOf(".") + 1).toUpperCase(),
          size: sizeText(bytes.length),
        })),
    }))
    .filter((group) => group.forms.length > 0);
}
