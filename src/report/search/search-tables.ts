import { counted } from "../../counted.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { SearchAnswer, SearchPoint, SearchResult, StepChange } from "../../study/search/result.js";
import { type Formatter, formatter, percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { hoursText, lettersOf, programWords } from "./search-words.js";

export interface SearchTables {
  readonly lead: readonly string[];
  readonly frontier: TableView;
  readonly typed: TableView;
  readonly answers: TableView;
  readonly steps: TableView;
  readonly timing: TableView;
  readonly worth: TableView;
}

/** What the search found, in tables and the sentences above them. */
export function searchTables(result: SearchResult, { money, study }: StudyDocument): SearchTables {
  const format = formatter(money.currency, study.units);
  const context: Context = { result, format, letters: lettersOf(result), horizon: money.horizon };
  return {
    lead: leadOf(context),
    frontier: frontierTable(context),
    typed: typedTable(context),
    answers: answerTable(context),
    steps: stepTable(context),
    timing: timingTable(context, money.startYear),
    worth: worthTable(context, money.startYear),
  };
}

interface Context {
  readonly result: SearchResult;
  readonly format: Formatter;
  readonly letters: ReadonlyMap<string, string>;
  readonly horizon: number;
}

const questions: Readonly<Record<SearchAnswer["question"], string>> = {
  best: "Least expected cost of program and infestation",
  "under-chance": "Cheapest a year that keeps the chance",
  "within-budget": "Least expected cost within the budget",
};

function leadOf({ result, format, horizon }: Context): string[] {
  const best = result.answers.find(({ question }) => question === "best");
  const least = result.typed.reduce((one, other) => (other.cost < one.cost ? other : one));
  const within = `program and infestation together over ${counted(horizon, "year")}, present value, on average`;
  const sentence =
    best?.point === undefined
      ? "No program of the search keeps the limits of the study."
      : least.cost < best.point.cost
        ? `No program of the search costs less than “${least.name}”: ${format.money(least.cost)} (${within}), against ${format.money(best.point.cost)} for the best of them. By what the study counts, none pays.`
        : `The best program of the search costs ${format.money(best.point.cost)} (${within}); the least of the options of the study, “${least.name}”, costs ${format.money(least.cost)}.`;
  const cheaper = result.answers.find(({ question }) => question === "under-chance");
  const same =
    cheaper?.point && !cheaper.isStated
      ? [
          `The chance of “${result.typed.find(({ mark }) => mark === "requested")?.name ?? ""}” is kept for ${format.money(cheaper.point.costPerYear)} a year: ${programWords(cheaper.point)}.`,
        ]
      : [];
  return [sentence, ...same];
}

function pointCells(point: Pick<SearchPoint, "costPerYear" | "chance" | "cost">, { format }: Context) {
  return [num(format.money(point.costPerYear)), num(percent(point.chance)), num(format.money(point.cost))];
}

const chanceHead = (horizon: number) => num(`Chance of infestation in ${counted(horizon, "year")}`);

function frontierTable(context: Context): TableView {
  const { result, format, letters, horizon } = context;
  return {
    id: "table-search-frontier",
    caption: "Efficient programs: none costs less a year and has less chance",
    head: head(
      "",
      "Program",
      num("Inspectors’ hours"),
      num("Cost a year"),
      chanceHead(horizon),
      num("Expected cost"),
      num("Best in"),
      num("Mean regret"),
    ),
    rows: result.frontier.map((point) =>
      row(
        letters.get(point.id) ?? "",
        programWords(point),
        num(hoursText(point.staffHours)),
        ...pointCells(point, context),
        num(percent(point.standing.bestIn)),
        num(format.money(point.standing.regret)),
      ),
    ),
    note: `Cost a year: in full, less fees and grants, at the prices entered. Expected cost: program and infestation, present value, on average over ${result.futures.toLocaleString("en-US")} simulated outcomes. Best in: share of the ${result.lakes} sets of values for the lake in which it costs least of all shown here. Regret: how much more it costs than the best in each.`,
  };
}

const marks = { "in-force": "in force", requested: "requested", nothing: "doing nothing" } as const;

function typedTable(context: Context): TableView {
  const { result, format, letters, horizon } = context;
  return {
    id: "table-search-options",
    caption: "The options of the study beside them",
    head: head(
      "Option",
      num("Cost a year"),
      chanceHead(horizon),
      num("Expected cost"),
      num("Best in"),
      num("Mean regret"),
      "Dominated by",
    ),
    rows: result.typed.map((option) =>
      row(
        option.mark ? `${option.name} (${marks[option.mark]})` : option.name,
        ...pointCells(option, context),
        num(percent(option.standing.bestIn)),
        num(format.money(option.standing.regret)),
        (option.dominatedBy && letters.get(option.dominatedBy)) ?? "none",
      ),
    ),
    note: "Dominated by: a program of the search that costs no more a year and has less chance.",
  };
}

function answerTable(context: Context): TableView {
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

const nextText = (point: SearchPoint, { format }: Context) =>
  `${format.money(point.costPerYear)} a year, ${percent(point.chance)}, expected cost ${format.money(point.cost)}`;

function limitText({ question, limit, isStated }: SearchAnswer, { format }: Context): string {
  if (limit === undefined) return "";
  const whose = isStated ? "" : ", as of the requested option";
  return question === "under-chance"
    ? ` of ${percent(limit)}${whose}`
    : ` of ${format.money(limit)} a year${whose}`;
}

function unmetText({ question, nearest, limit = 0 }: SearchAnswer, { format }: Context): string {
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

function bindingText({ binds, relaxed }: SearchAnswer, context: Context): string {
  return relaxed ? `${bindings[binds]}: ${relaxedText(relaxed, context)}` : bindings[binds];
}

function relaxedText({ costPerYear, chance, cost }: StepChange, { format }: Context): string {
  return `${signed(costPerYear, format.money)} a year, ${signed(chance, points)} of chance, ${signed(cost, format.money)} of expected cost`;
}

const points = (value: number) => `${significant(value * 100, 2)} points`;

const signed = (value: number, text: (value: number) => string) =>
  value === 0 ? text(0) : `${value < 0 ? "−" : "+"}${text(Math.abs(value))}`;

function boundNote({ result, format }: Context): string {
  const best = result.answers.find(({ question }) => question === "best");
  const searched = `${result.programs.toLocaleString("en-US")} different programs were searched; ${result.evaluated} had to be worked out.`;
  if (!best?.point || best.bound === undefined) return searched;
  const gap = Math.max(0, best.point.cost - best.bound);
  return `${searched} None of them has an expected cost below the best by more than ${format.exactMoney(Math.ceil(gap))}.`;
}

function stepTable(context: Context): TableView {
  const { result, format } = context;
  return {
    id: "table-search-steps",
    caption: `The next step from “${result.baseName}”: one thing more or less`,
    head: head(
      "Step",
      num("Cost a year"),
      num("Chance"),
      num("Infestation avoided"),
      num("Left after the program"),
    ),
    rows: result.steps.map(({ what, costPerYear, chance, avoidedLoss, netBenefit }) =>
      row(
        what,
        num(signed(costPerYear, format.money)),
        num(signed(chance, points)),
        num(signed(avoidedLoss, format.money)),
        num(signed(netBenefit, format.money)),
      ),
    ),
    note: "Infestation avoided and what is left: expected present values over the horizon. An inspector more than the wait needs shortens the wait and avoids nothing. Hours are put where most boats come.",
  };
}

function timingTable(context: Context, startYear: number): TableView {
  const { result, format } = context;
  return {
    id: "table-search-timing",
    caption: `When “${result.baseName}” begins and ends`,
    head: head("Years", chanceHead(context.horizon), num("Program"), num("Infestation"), num("Together")),
    rows: result.timings.map(({ what, years, chance, program, loss, cost }) =>
      row(
        what === "from" ? `from ${startYear + years} on` : `ends after ${startYear + years - 1}, if clean`,
        num(percent(chance)),
        ...[program, loss, cost].map((amount) => num(format.money(amount))),
      ),
    ),
    note: "Expected present values. The chance of a lake that has stayed clean is taken as the same each year, apart from what the study says of other ways in.",
  };
}

function worthTable({ result, format }: Context, startYear: number): TableView {
  return {
    id: "table-search-worth",
    caption: `What one year of “${result.baseName}” is worth, the other years unchanged`,
    head: head("Year", num("Damage avoided less cost, present value")),
    rows: result.worthByYear.map((worth, year) =>
      row(String(startYear + year), num(signed(worth, format.money))),
    ),
    compact: true,
  };
}
