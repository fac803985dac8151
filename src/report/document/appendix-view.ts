import type { Assumption } from "../../assumptions/entry.js";
import { programVersion } from "../../assumptions/version.js";
import { byYearTable } from "../rack/infestation-years.js";
import { breakable, rangeText, unitText } from "../words/assumption-text.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { basesOf } from "./bases.js";
import { checkRows } from "./check-rows.js";
import type { ReportContext } from "./context.js";
import { linesTable } from "./lines-table.js";
import { pricesText } from "./money-view.js";

export interface AppendixView {
  readonly lines: TableView;
  readonly byYear: TableView;
  readonly assumptions: TableView;
  readonly overrides: TableView | undefined;
  readonly alterations: TableView | undefined;
  readonly checks: TableView;
  readonly sources: readonly { readonly key: string; readonly citation: string; readonly read: string }[];
  readonly bases: string;
}

export function appendixView(context: ReportContext): AppendixView {
  return {
    lines: linesTable(context),
    byYear: byYearTable(context),
    assumptions: assumptionsTable(context),
    overrides: overridesTable(context),
    alterations: alterationsTable(context),
    checks: checksTable(context),
    sources: sources(context),
    bases: basesText(context),
  };
}

function assumptionsTable(context: ReportContext): TableView {
  const { run, assumptionNumber } = context;
  const used = [...run.usedAssumptions].sort().flatMap((id) => run.assumptions.entries.get(id) ?? []);
  const overrides = new Map(run.overrides.map((override) => [override.entry.id, override]));
  return {
    id: "table-assumptions",
    caption: "Every assumption used, with its origin",
    head: head("Assumption", num("Value (low–high), unit"), "Basis", "Source and note"),
    rows: used.map((entry) => {
      const own = overrides.get(entry.id);
      return row(
        `${assumptionNumber(entry.id)} ${breakable(entry.id)}`,
        num(
          own
            ? `${own.text} (own) (${entry.low}–${entry.high}) ${unitText(entry)}`
            : [`${entry.value} (${rangeText(entry)}) ${unitText(entry)}`, usedText(entry, context)]
                .filter(Boolean)
                .join(" → "),
        ),
        own ? "operator" : entry.basis,
        [`[${entry.source}]`, entry.note].filter(Boolean).join(" "),
      );
    }),
    note: pricesNote(context),
  };
}

/** A price in the study's money with what it was multiplied by; nothing where it is used as its source has it. */
function usedText(entry: Assumption, { run, priceYear }: ReportContext): string {
  const factor = run.prices.factorOf(entry);
  if (factor === 1) return "";
  const { currency } = run.document.money;
  const year = run.prices.index ? priceYear : entry.priceYear;
  const unit = entry.unit.replace("$", currency);
  return `${significant(entry.value * factor, 4)} ${unit} of ${year} (× ${significant(factor, 4)})`;
}

function pricesNote(context: ReportContext): string {
  return `A value stands as its source has it; after the arrow, as it is used. Values between low and high are drawn by a beta-PERT distribution where no other is named. ${pricesText(context)} “Judged” means that no published value was found: replace it with the operator's own.`;
}

function overridesTable(context: ReportContext): TableView | undefined {
  const { run } = context;
  if (run.overrides.length === 0) return undefined;
  return {
    id: "table-overrides",
    caption: "Own values in place of the project's assumptions",
    head: head("Assumption", num("Own value"), num("Project's value"), "Reason", "Within the stated range"),
    rows: run.overrides.map(({ entry, text, reason, outsideRange }) =>
      row(
        entry.id,
        num(text),
        num([`${entry.value} ${unitText(entry)}`, usedText(entry, context)].filter(Boolean).join(" → ")),
        reason,
        outsideRange ? "no" : "yes",
      ),
    ),
  };
}

function alterationsTable({ run }: ReportContext): TableView | undefined {
  const { alterations } = run.assumptions;
  if (alterations.length === 0) return undefined;
  return {
    id: "table-alterations",
    caption: `Not as version ${programVersion()} of the program ships it`,
    head: head("Altered in the folder of assumptions", "Used here", "As shipped"),
    rows: alterations.map(({ what, found, shipped }) => row(what, found, shipped)),
  };
}

function checksTable({ run }: ReportContext): TableView {
  return {
    id: "table-checks",
    caption: "Plausibility checks",
    head: head("Check", "Found", "Allowed", "Passed"),
    rows: checkRows(run).map((check) => ({
      ...row(check.what, check.found, check.allowed, check.passed ? "yes" : "NO"),
      failed: !check.passed,
    })),
  };
}

/** Every source of the project, since notes name others than the one that an entry stands on. */
function sources({ run }: ReportContext) {
  return [...run.assumptions.sources].sort().map(([key, source]) => ({ key, ...source }));
}

/** How many of the assumptions used stand on what. */
function basesText(context: ReportContext): string {
  const { all, counts } = basesOf(context);
  return `Of ${all} assumptions used: ${counts.map(([basis, count]) => `${count} ${basis}`).join(", ")}.`;
}
