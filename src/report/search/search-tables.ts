import { counted } from "../../counted.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { ProgramSearch } from "../../study/search/result.js";
import { formatter } from "../words/format.js";
import type { TableView } from "../words/view-types.js";
import { answerTable } from "./answer-table.js";
import { frontierTable, typedTable } from "./frontier-tables.js";
import type { ProgramContext } from "./program-cells.js";
import { lettersOf, programWords } from "./search-words.js";
import { stepTable, timingTable, worthTable } from "./step-tables.js";

export interface SearchTables {
  readonly lead: readonly string[];
  readonly frontier: TableView;
  readonly typed: TableView;
  readonly answers: TableView;
  readonly steps: TableView;
  readonly timing: TableView;
  readonly worth: TableView;
}

/** What the search found of programs, in tables and the sentences above them. */
export function searchTables(result: ProgramSearch, { money, study }: StudyDocument): SearchTables {
  const format = formatter(money.currency, study.units);
  const { horizon, startYear } = money;
  const context: ProgramContext = { result, format, letters: lettersOf(result), horizon, startYear };
  return {
    lead: leadOf(context),
    frontier: frontierTable(context),
    typed: typedTable(context),
    answers: answerTable(context),
    steps: stepTable(context),
    timing: timingTable(context),
    worth: worthTable(context),
  };
}

function leadOf(context: ProgramContext): string[] {
  return [bestText(context), ...typedText(context), ...sameChanceText(context)];
}

/** The best program against doing nothing. */
function bestText({ result, format, horizon }: ProgramContext): string {
  const best = result.answers.find(({ question }) => question === "best")?.point;
  const nothing = result.typed.find(({ mark }) => mark === "nothing");
  if (!best || !nothing) return "No program of the search keeps the limits of the study.";
  const within = `program and infestation together over ${counted(horizon, "year")}, present value, on average`;
  return nothing.cost <= best.cost
    ? `No program of the search pays: “${nothing.name}” costs ${format.money(nothing.cost)} (${within}), the best of them ${format.money(best.cost)}.`
    : `The best program of the search costs ${format.money(best.cost)} (${within}), against ${format.money(nothing.cost)} for “${nothing.name}”: ${programWords(best)}.`;
}

/** The option of the study that costs least, where it does something. */
function typedText({ result, format }: ProgramContext): string[] {
  const best = result.answers.find(({ question }) => question === "best")?.point;
  const least = result.typed.reduce((one, other) => (other.cost < one.cost ? other : one));
  if (!best || least.mark === "nothing") return [];
  const cost = format.money(least.cost);
  return least.cost - best.cost <= equalShare * least.cost
    ? [`No program of the search costs less than the option “${least.name}”, ${cost}.`]
    : [`Of the options of the study, “${least.name}” costs least: ${cost}.`];
}

/** Costs that differ by a smaller share are told as the same. */
const equalShare = 1e-6;

function sameChanceText({ result, format }: ProgramContext): string[] {
  const { point, isStated } = result.answers.find(({ question }) => question === "under-chance") ?? {};
  if (!point || isStated) return [];
  const requested = result.typed.find(({ mark }) => mark === "requested")?.name ?? "";
  return [
    `The chance of “${requested}” is kept for ${format.money(point.costPerYear)} a year: ${programWords(point)}.`,
  ];
}
