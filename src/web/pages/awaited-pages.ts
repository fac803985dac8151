import type { Response } from "express";
import { answerInTime, patienceMilliseconds } from "../../app/answers/answer-in-time.js";
import {
  type Answering,
  type Asked,
  type Kind,
  type LatestAnswer,
  type LatestOf,
  type StudyText,
  textOf,
} from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import { workbenchPage } from "./workbench-page.js";

/** Seconds after which a page or a program asks again. */
export const askAgainSeconds = 2;

type SomeStudy = Pick<LatestOf<Kind, StudyEntry>, "study" | "find">;

/** A study as it is at the time, rather than when it was first asked for. */
export const latestIn = (find: (id: string) => StudyEntry, id: string): SomeStudy => ({
  study: id,
  find: () => find(id),
});

export type AskLatest<Which extends Kind> = (
  latest: LatestOf<Which, StudyEntry>,
  signal: AbortSignal,
) => Promise<LatestAnswer<Which, StudyEntry>>;

interface Sending extends SomeStudy {
  readonly response: Response;
  readonly answers: Answering;
}

/** @param report its address */
export async function sendResults(
  sending: Sending,
  report: string,
  firstOf: (entry: StudyEntry) => object | undefined = () => undefined,
): Promise<void> {
  const { response, answers } = sending;
  const askResults: AskLatest<"results"> = (latest, signal) => answers.askLatest("results", latest, signal);
  const askedOf = (entry: StudyEntry) => ({ ...textOf(entry), report });
  const found = await wholeOrWaiting(sending, ["results", askedOf], askResults);
  if (!found) return;
  const { entry } = found;
  const balance = await answers.ask("balance", textOf(entry));
  const frame = { entry, balance, part: "results", title: "Results" };
  const content = { body: found.answer, drawsCharts: true, first: firstOf(entry) };
  response.send(renderPage("comparison", workbenchPage(frame, content)));
}

/** From what the yearly chance comes, and how firm it is. */
export async function sendChance(sending: Sending): Promise<void> {
  const { response, answers } = sending;
  const askChance: AskLatest<"chance"> = (latest, signal) => answers.askLatest("chance", latest, signal);
  const askedOf = ({ id, ...entry }: StudyEntry) => ({ ...textOf(entry), study: `/studies/${id}` });
  const found = await wholeOrWaiting(sending, ["chance", askedOf], askChance);
  if (!found) return;
  const { entry } = found;
  const balance = await answers.ask("balance", textOf(entry));
  const frame = { entry, balance, part: "chance", title: "Where the chance comes from" };
  response.send(renderPage("chance", workbenchPage(frame, { body: found.answer })));
}

/** The report on a screen. @param ask as it is asked for: with the odds of the study */
export async function sendReport(
  sending: Sending,
  howOf: (entry: StudyEntry) => Omit<Asked<"report">, keyof StudyText>,
  ask: AskLatest<"report">,
): Promise<void> {
  const askedOf = (entry: StudyEntry) => ({ ...textOf(entry), ...howOf(entry) });
  const found = await wholeOrWaiting(sending, ["report", askedOf], ask);
  if (found) sending.response.type("html").send(Buffer.from(found.answer));
}

/**
 * What a page is made from if it is there soon; else the page says that it is being worked out, and shows itself once it
 * is there: by a script, which asks for the same address with `awaited`, or by asking again every two seconds.
 */
async function wholeOrWaiting<Which extends "results" | "report" | "chance">(
  { study, find, response, answers }: Sending,
  [kind, askedOf]: readonly [Which, LatestOf<Which, StudyEntry>["askedOf"]],
  ask: AskLatest<Which>,
): Promise<LatestAnswer<Which, StudyEntry> | undefined> {
  const gone = readerSignal(response);
  const { originalUrl, query } = response.req;
  const whole = (signal: AbortSignal) => ask({ study, find, askedOf }, signal);
  if (query[awaited] !== undefined) {
    await whole(gone);
    response.status(204).end();
    return undefined;
  }
  // The head of the page is worked out beside its body; a fault of it is told when the head asks again.
  answers.ask("balance", textOf(find())).catch(() => undefined);
  const found = await answerInTime(whole, patienceMilliseconds, gone);
  if (found !== "under way") return found.answer;
  const entry = find();
  const balance = await answers.ask("balance", textOf(entry));
  const ready = `${originalUrl}${originalUrl.includes("?") ? "&" : "?"}${awaited}=1`;
  const content = { askAgain: askAgainSeconds, here: originalUrl, ready };
  response.status(202).set({ "Cache-Control": "no-store", "Retry-After": String(askAgainSeconds) });
  const frame = { entry, balance, part: kind, title: "Being worked out" };
  response.send(renderPage("waiting", workbenchPage(frame, content)));
  return undefined;
}

const awaited = "awaited";
