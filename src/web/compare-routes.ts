import type { Express, Request } from "express";
import { differenceView } from "../report/difference-view.js";
import { differencesJson } from "../report/differences-json.js";
import { linkedAssets } from "../report/html.js";
import {
  type ComparedRun,
  explained,
  type StudyDifferences,
  studyDifferences,
} from "../study/compared/compared.js";
import { answerDesk, patienceMilliseconds } from "./answer-desk.js";
import { compareChooser } from "./compare-chooser.js";
import { type ComparedShelves, type ComparedSide, comparedSide } from "./compared-side.js";
import { NotFoundError } from "./explain.js";
import { renderPage } from "./render.js";

interface ExplainQuestion {
  readonly keys: readonly [string, string];
  readonly runs: readonly [ComparedRun, ComparedRun];
  readonly differences: StudyDifferences;
}

type Pair = readonly [ComparedSide, ComparedSide];

/** Any two studies, revisions or issued reports beside each other. */
export function addCompare(app: Express, shelves: ComparedShelves): void {
  const desk = answerDesk(
    ({ keys }: ExplainQuestion) => keys,
    ({ runs: [left, right], differences }) => explained(left, right, differences),
  );
  const chosen = (request: Request) => {
    const left = comparedSide(textOf(request.query.left), shelves);
    const right = comparedSide(textOf(request.query.right), shelves);
    return left && right ? ([left, right] as const) : undefined;
  };
  app.get("/compare", async (request, response) => {
    const pair = chosen(request);
    const base = {
      title: "Compare two studies",
      assets: linkedAssets,
      chooser: compareChooser(shelves, [textOf(request.query.left), textOf(request.query.right)]),
    };
    if (!pair) {
      response.send(renderPage("compare", { ...base, sides: undefined, view: undefined }));
      return;
    }
    const question = questionOf(pair);
    const { runs, differences } = question;
    const found = await desk.within(patienceMilliseconds, question);
    const [left, right] = namedSides(pair);
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
    const question = questionOf(pair);
    response.json({
      ...sidesJson(pair),
      ...differencesJson(question.differences, await desk.answer(question)),
    });
  });
}

function questionOf([left, right]: Pair): ExplainQuestion {
  const runs = [left.run(), right.run()] as const;
  return { keys: [left.key, right.key], runs, differences: studyDifferences(...runs) };
}

const textOf = (value: unknown): string => (typeof value === "string" ? value : "");

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
