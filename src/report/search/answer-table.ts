import type { SearchAnswer, SearchPoint, StepChange } from "../../study/search/result.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { chanceHead, type ProgramContext, pointCells, points, signed } from "./program-cells.js";
import { programWords } from "./search-words.js";

const questions: Readonly<Record<SearchAnswer["question"], string>> = {
  best: "Least expected cost of program and infestation",
  "under-chance": "Cheapest a year that keeps the chance",
  "within-budget": "Least expected cost within the budget",
};

export function answerTable(context: ProgramContext): TableView {
  const { result, horizon } = context;
  return {
    id: "table-search-answers",
    caption: "Which program fits",
    head: head(
      "Question",
      "Program",
      num("Cost a year"),
      chanceHead(horizon),
      num("Expected cost"),
      "What binds, and one step beyond it",
      "Next best",
    ),
    rows: result.answers.map((answer) => {
      const { point, nextBest } = answer;
      const question = `${questions[answer.question]}${limitText(answer, context)}`;
      if (!point) return row(question, unmetText(answer, context), num("–"), num("–"), num("–"), "–", "–");
      const next = nextBest ? nextText(nextBest, context) : "there is no other";
      return row(
        question,
        programWords(point),
        ...pointCells(point, context),
        bindingText(answer, context),
        next,
      );
    }),
    note: boundNote(context),
  };
}

const nextText = (point: SearchPoint, { format }: ProgramContext) =>
  `${format.money(point.costPerYear)} a year, ${percent(point.chance)}, expected cost ${format.money(point.cost)}`;

function limitText({ question, limit, isStated }: SearchAnswer, { format }: ProgramContext): string {
  if (limit === undefined) return "";
  const whose = isStated ? "" : ", as of the requested option";
  return question === "under-chance"
    ? ` of ${percent(limit)}${whose}`
    : ` of ${format.money(limit)} a year${whose}`;
}

function unmetText({ question, nearest, limit = 0 }: SearchAnswer, { format }: ProgramContext): string {
  if (nearest === undefined)
    return "No program keeps the limits of the study together; relax the budget or the hours.";
  return question === "under-chance"
    ? `No program keeps a chance of ${percent(limit)}; the nearest is ${percent(nearest)}.`
    : `No program costs so little; the cheapest costs ${format.money(nearest)} a year.`;
}

const bindings = {
  budget: "the budget",
  "staff-hours": "the inspectors’ hours",
  chance: "the chance",
  "all-open": "all that may be open is open",
  "all-closed": "all is closed that may be",
  nothing: "nothing",
} as const;

function bindingText({ binds, relaxed }: SearchAnswer, context: ProgramContext): string {
  return relaxed ? `${bindings[binds]}: ${relaxedText(relaxed, context)}` : bindings[binds];
}

function relaxedText({ costPerYear, chance, cost }: StepChange, { format }: ProgramContext): string {
  return `${signed(costPerYear, format.money)} a year, ${signed(chance, points)} of chance, ${signed(cost, format.money)} of expected cost`;
}

function boundNote({ result, format }: ProgramContext): string {
  const best = result.answers.find(({ question }) => question === "best");
  const searched = `${result.programs.toLocaleString("en-US")} different programs were searched; ${result.evaluated} had to be worked out.`;
  const unkept =
    result.unkept === 0
      ? ""
      : ` ${result.unkept.toLocaleString("en-US")} openings were left out, since no number of inspectors keeps the wait in them.`;
  if (!best?.point || best.bound === undefined) return `${searched}${unkept}`;
  const gap = Math.max(0, best.point.cost - best.bound);
  return `${searched}${unkept} None of them has an expected cost below the best by more than ${format.exactMoney(Math.ceil(gap))}, ${percent(gap / best.point.cost)} of it.`;
}
