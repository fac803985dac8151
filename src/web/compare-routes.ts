import type { Express, Request } from "express";
import { differenceView } from "../report/difference-view.js";
import { differencesJson } from "../report/differences-json.js";
import { linkedAssets, renderPage } from "../report/html.js";
import { DeletedStudyError } from "../store/errors.js";
import {
  type ComparedRun,
  explained,
  type StudyDifferences,
  studyDifferences,
} from "../study/compared/compared.js";
import { answerDesk, patienceMilliseconds } from "./answer-desk.js";
import { compareChooser } from "./compare-chooser.js";
import { NotFoundError } from "./explain.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";

interface ExplainQuestion {
  readonly texts: readonly [string, string];
  readonly runs: readonly [ComparedRun, ComparedRun];
  readonly differences: StudyDifferences;
}

/** Any two studies or revisions beside each other. */
export function addCompare(app: Express, shelf: StudyShelf): void {
  const desk = answerDesk(
    ({ texts }: ExplainQuestion) => texts,
    ({ runs: [left, right], differences }) => explained(left, right, differences),
  );
  const chosen = (request: Request) => {
    const left = entryOf(request.query.left, shelf);
    const right = entryOf(request.query.right, shelf);
    return left && right ? ([left, right] as const) : undefined;
  };
  app.get("/compare", async (request, response) => {
    const pair = chosen(request);
    const base = {
      title: "Compare two studies",
      assets: linkedAssets,
      chooser: compareChooser(shelf, [textOf(request.query.left), textOf(request.query.right)]),
    };
    if (!pair) {
      response.send(renderPage("compare", { ...base, sides: undefined, view: undefined }));
      return;
    }
    const question = questionOf(pair, shelf);
    const { runs, differences } = question;
    const found = await desk.within(patienceMilliseconds, question);
    const [left, right] = sidesOf(pair);
    const references = `left=${left.reference}&right=${right.reference}`;
    const explanation = found === "under way" ? undefined : found.answer;
    response.set("Cache-Control", "no-store").send(
      renderPage("compare", {
        ...base,
        isUnderWay: found === "under way",
        sides: { left, right, here: `/compare?${references}`, json: `/compare.json?${references}` },
        view: differenceView(runs, differences, explanation, { left: left.name, right: right.name }),
      }),
    );
  });
  app.get("/compare.json", async (request, response) => {
    const pair = chosen(request);
    if (!pair) throw new NotFoundError();
    const question = questionOf(pair, shelf);
    response.json({
      ...sidesJson(pair),
      ...differencesJson(question.differences, await desk.answer(question)),
    });
  });
}

function questionOf([left, right]: readonly [ShelfEntry, ShelfEntry], shelf: StudyShelf): ExplainQuestion {
  const runs = [shelf.compared(left), shelf.compared(right)] as const;
  return { texts: [left.text, right.text], runs, differences: studyDifferences(...runs) };
}

const textOf = (value: unknown): string => (typeof value === "string" ? value : "");

/** A study by its id, or one of its revisions: "marina-lake@3". @throws NotFoundError, DeletedStudyError */
function entryOf(reference: unknown, shelf: StudyShelf): ShelfEntry | undefined {
  if (textOf(reference) === "") return undefined;
  const [, id = "", revision] = /^([^@]+)(?:@(\d{1,9}))?$/.exec(textOf(reference)) ?? [];
  const entry = revision === undefined ? shelf.find(id) : shelf.revision(id, Number(revision));
  if (!entry) throw new NotFoundError();
  if (entry.state === "deleted") throw new DeletedStudyError(entry);
  return entry;
}

/** Revisions of one study are called by their numbers, two studies by their names. */
function sidesOf([left, right]: readonly [ShelfEntry, ShelfEntry]) {
  const isOne = left.id === right.id;
  return [left, right].map((entry) => ({
    reference: entry.isExample ? entry.id : `${entry.id}@${entry.revision}`,
    name: isOne ? `Revision ${entry.revision}` : entry.name,
    study: entry.name,
    href: entry.isExample ? `/studies/${entry.id}` : `/studies/${entry.id}/revisions/${entry.revision}`,
    detail: [
      entry.isExample ? "invented example" : `revision ${entry.revision}, ${entry.savedAt.slice(0, 10)}`,
      entry.author,
    ]
      .filter(Boolean)
      .join(", "),
  })) as [Side, Side];
}

interface Side {
  readonly reference: string;
  readonly name: string;
  readonly study: string;
  readonly href: string;
  readonly detail: string;
}

function sidesJson(pair: readonly [ShelfEntry, ShelfEntry]) {
  const [left, right] = pair.map(({ id, revision, name }) => ({ id, revision, name }));
  return { left, right };
}
