import type { Express, Request } from "express";
import { answerInTime, patienceMilliseconds } from "../../app/answers/answer-in-time.js";
import type { Answering, ComparedPair } from "../../app/answers/questions.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { NotFoundError } from "../explain.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import { compareChooser } from "./compare-chooser.js";
import { type ComparedSide, type ComparedSources, comparedSide } from "./compared-side.js";
import { studyMenu } from "./study-menu.js";

type Pair = readonly [ComparedSide, ComparedSide];

/** Any two studies, revisions or issued reports beside each other. */
export function addCompare(
  app: Express,
  { answers, ...sources }: ComparedSources & { readonly answers: Answering },
): void {
  const chosen = (request: Request): Pair | undefined => {
    const left = comparedSide(wordOf(request.query.left), sources);
    const right = comparedSide(wordOf(request.query.right), sources);
    return left && right ? [left, right] : undefined;
  };
  app.get("/compare", async (request, response) => {
    const pair = chosen(request);
    const base = {
      title: "Compare two studies",
      assets: linkedAssets,
      chooser: compareChooser(sources, [wordOf(request.query.left), wordOf(request.query.right)]),
    };
    if (!pair) {
      response.send(renderPage("compare", { ...base, sides: undefined, view: undefined }));
      return;
    }
    const [left, right] = namedSides(pair);
    const asked = askedOf(pair);
    const explanation = (signal: AbortSignal) => answers.ask("explanation", asked, signal);
    const found = await answerInTime(explanation, patienceMilliseconds, readerSignal(response));
    const isUnderWay = found === "under way";
    const { view } = isUnderWay ? await answers.ask("differences", asked) : found.answer;
    const references = `left=${left.reference}&right=${right.reference}`;
    const menus = [...new Map(pair.map((side) => [side.id, studyMenu(side.id, side.name)])).values()];
    const sides = { left, right, here: `/compare?${references}`, json: `/compare.json?${references}` };
    response
      .set("Cache-Control", "no-store")
      .send(renderPage("compare", { ...base, isUnderWay, sides, view, menus }));
  });
  app.get("/compare.json", async (request, response) => {
    const pair = chosen(request);
    if (!pair) throw new NotFoundError();
    const { json } = await answers.ask("explanation", askedOf(pair), readerSignal(response));
    response.json({ ...sidesJson(pair), ...json });
  });
}

function askedOf(pair: Pair): ComparedPair {
  const [left, right] = namedSides(pair);
  return { left: pair[0].study, right: pair[1].study, names: { left: left.name, right: right.name } };
}

const wordOf = (value: unknown): string => (typeof value === "string" ? value : "");

/** Sides of one study are called by their numbers, two studies by their names. */
function namedSides([left, right]: Pair) {
  const isOne = left.id === right.id;
  const named = ({ reference, name, short, href, detail }: ComparedSide) => ({
    reference,
    name: isOne ? short : name,
    study: name,
    href,
    detail,
  });
  return [named(left), named(right)] as const;
}

function sidesJson(pair: Pair) {
  const [left, right] = pair.map(({ id, revision, name }) => ({ id, revision, name }));
  return { left, right };
}
