import type { ReportContext } from "../../report/document/context.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import type { BudgetSheet } from "./budget-sheet.js";

/** What a payer pays in a year, counted from 0, as a formula of the request and of the budget. */
interface Payer {
  readonly name: string;
  readonly formula: (year: number) => string;
}

/** Cells of a year of the request; sources and what is carried in bear a minus. */
interface RequestCells extends Pick<BudgetSheet, "cells"> {
  readonly source: (index: number, year: number) => string;
  readonly carriedIn: (year: number) => string;
  readonly fund: (year: number) => string;
}

/** As the request calls those who pay fees. */
const feePayers = "Boaters, by fees";

/** Those who pay, as the request names them: revenue by line, sources by payer, and the fund. */
export function payersOf(
  { funded, payers }: TracedRequest,
  { run }: Pick<ReportContext, "run">,
  { cells, source, carriedIn, fund }: RequestCells,
): Payer[] {
  const { bearers, programBearer } = run.document.money;
  const own = bearers.find(({ id }) => id === programBearer)?.name ?? programBearer;
  return payers.map(({ name }) => ({
    name,
    formula: (year) => {
      const received = cells(year, (line) =>
        line.group === "fees" ? name === feePayers : line.group === "other-revenue" && line.name === name,
      );
      const paid = [
        ...received.map(({ formula }) => `-${formula}`),
        ...funded.sources.flatMap((each, index) =>
          each.source.payer === name ? [`-${source(index, year)}`] : [],
        ),
        ...(name === own ? [`+${fund(year)}-${carriedIn(year)}`] : []),
      ];
      return paid.join("") || "0";
    },
  }));
}
