import type { Express } from "express";
import { textOf } from "../../app/answers/questions.js";
import { monthName } from "../../report/words/month-name.js";
import { monthNames } from "../../study/format/month-names.js";
import { InputError } from "../../study/reading/problems.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import type { StudyPages } from "./study-pages.js";
import { workbenchPage } from "./workbench-page.js";

/** One month of one structure worked by hand, as it is asked for in the address. */
export function addWorked(app: Express, { answers, find }: Pick<StudyPages, "answers" | "find">): void {
  app.get("/studies/:id/worked", async (request, response) => {
    const entry = find(request.params.id);
    const balance = await answers.ask("balance", textOf(entry));
    if (!balance.line) throw new InputError(balance.subject, balance.problems);
    const structure = typeof request.query.part === "string" ? request.query.part : undefined;
    const month = months.indexOf(String(request.query.month));
    const asked = { structure, month: month < 0 ? undefined : month };
    const sheets = await answers.ask("worked", { ...textOf(entry), asked }, readerSignal(response));
    const chosen = structure ?? sheets.structures[0]?.id;
    const isKnown = sheets.structures.length === 0 || sheets.structures.some(({ id }) => id === chosen);
    const frame = { entry, balance, part: "worked", title: "Worked by hand" };
    const view = workbenchPage(frame, {
      href: `/studies/${entry.id}/worked`,
      structures: sheets.structures.map(({ id, name }) => ({
        value: id,
        label: name,
        chosen: id === chosen,
      })),
      months: monthChoices(month),
      problem: isKnown
        ? ""
        : `Found the structure “${structure}”, for which this study has no sheet; allowed: those in the list. Choose one of them.`,
      body: isKnown ? sheets.body : "",
    });
    response
      .status(isKnown ? 200 : 404)
      .set("Cache-Control", "no-store")
      .send(renderPage("worked-sheets", view));
  });
}

const months: readonly string[] = monthNames;

const monthChoices = (chosen: number) => [
  { value: "", label: "that of the thickest layer", chosen: chosen < 0 },
  ...monthNames.map((value, month) => ({ value, label: monthName(month), chosen: month === chosen })),
];
