import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { chanceHead, type ProgramContext, pointCells } from "./program-cells.js";
import { hoursText, programWords } from "./search-words.js";

export function frontierTable(context: ProgramContext): TableView {
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
      num("Average cost of choosing wrongly"),
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

export function typedTable(context: ProgramContext): TableView {
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
      num("Average cost of choosing wrongly"),
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
