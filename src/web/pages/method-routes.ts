import type { Express, Response } from "express";
import { type StudyText, textOf } from "../../app/answers/questions.js";
import { withFilePolicy } from "../access/security-headers.js";
import { readerSignal } from "../reader-gone.js";
import type { StudyPages } from "./study-pages.js";

/** The method document, which is the same for every study, and with the worked sheets of one. */
export function addMethod(app: Express, { answers, printer, find }: StudyPages): void {
  const printed = async (study: StudyText | undefined, signal?: AbortSignal): Promise<Buffer> => {
    const { body, settings } = await answers.ask("methodToPrint", { study }, signal);
    return Buffer.from(await printer.print(body, settings, signal));
  };
  const ofProgram = remembered(() => printed(undefined));
  app.get("/method", async (_request, response) => {
    const links = { back: "/", pdf: "/method.pdf" };
    const page = await answers.ask("method", { study: undefined, links }, readerSignal(response));
    response.type("html").send(Buffer.from(page));
  });
  app.get("/method.pdf", async (_request, response) => {
    sendPdf(response, "method.pdf", await ofProgram());
  });
  app.get("/studies/:id/method.pdf", async (request, response) => {
    const entry = find(request.params.id);
    sendPdf(response, `${entry.id}-method.pdf`, await printed(textOf(entry), readerSignal(response)));
  });
}

/** What does not change while the server runs, made when it is first asked for; what failed is tried again. */
function remembered<Found>(make: () => Promise<Found>): () => Promise<Found> {
  let kept: Promise<Found> | undefined;
  return () => {
    kept ??= make().catch((error: unknown) => {
      kept = undefined;
      throw error;
    });
    return kept;
  };
}

function sendPdf(response: Response, name: string, pdf: Buffer): void {
  withFilePolicy(response, "pdf")
    .type("pdf")
    .set("Content-Disposition", `inline; filename="${name}"`)
    .send(pdf);
}
