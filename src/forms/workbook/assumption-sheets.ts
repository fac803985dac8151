import type { Alteration } from "../../assumptions/entry.js";
import { programVersion } from "../../assumptions/version.js";
import type { ReportContext } from "../../report/document/context.js";
import { type SheetDraft, text, value } from "./sheet.js";

/** Every assumption used: as its source has it, what it was multiplied by, and as it was used. */
export function assumptionSheet({ run, assumptionNumber }: ReportContext): SheetDraft {
  const used = [...run.usedAssumptions].sort();
  const own = new Map(run.overrides.map((override) => [override.entry.id, override]));
  const heads = [
    "Number",
    "Assumption",
    "Value",
    "Low",
    "High",
    "Unit",
    "Prices of",
    "Price factor",
    "Used",
    "Basis",
    "Source",
    "Note",
  ];
  const firstRow = 4;
  return {
    name: "Assumptions",
    widths: [9, 40, 12, 12, 12, 12, 10, 12, 14, 18, 60, 60],
    headRows: firstRow,
    rows: [
      [text("Every assumption used", "title")],
      [text("Used: value × price factor, or the operator's own value in its place.", "note")],
      [],
      heads.map((each) => text(each, "head")),
      ...used
        .flatMap((id) => run.assumptions.entries.get(id) ?? [])
        .map((entry, index) => {
          const override = own.get(entry.id);
          const factor = run.prices.factorOf(entry);
          const formula = `C${firstRow + index + 1}*H${firstRow + index + 1}`;
          return [
            text(assumptionNumber(entry.id)),
            text(entry.id),
            value(entry.value, "plain"),
            value(entry.low, "plain"),
            value(entry.high, "plain"),
            text(entry.unit === "1" ? "" : entry.unit),
            entry.priceYear === undefined ? text("") : value(entry.priceYear, "whole"),
            value(factor, "factor"),
            override
              ? value(override.value, "plain")
              : value({ formula, result: entry.value * factor }, "plain"),
            text(override ? "operator" : entry.basis),
            text(run.assumptions.sources.get(entry.source)?.citation ?? entry.source),
            text(entry.note),
          ];
        }),
    ],
  };
}

/** The operator's own values, with their reasons. */
export function overrideSheet({ run }: ReportContext): SheetDraft {
  const heads = ["Assumption", "Own value", "Project's value", "Unit", "Reason", "Within the stated range"];
  return {
    name: "Overrides",
    widths: [40, 20, 16, 12, 70, 14],
    headRows: 3,
    rows: [
      [text("Own values in place of the project's assumptions", "title")],
      [text(run.overrides.length === 0 ? "None." : "", "note")],
      heads.map((each) => text(each, "head")),
      ...run.overrides.map(({ entry, text: typed, reason, outsideRange }) => [
        text(entry.id),
        text(typed),
        value(entry.value, "plain"),
        text(entry.unit === "1" ? "" : entry.unit),
        text(reason),
        text(outsideRange ? "no" : "yes"),
      ]),
      ...alterationRows(run.assumptions.alterations),
    ],
  };
}

/** What was altered in the folder of assumptions, where no study says why. */
function alterationRows(alterations: readonly Alteration[]): SheetDraft["rows"] {
  if (alterations.length === 0) return [];
  return [
    [],
    [text(`Not as version ${programVersion()} of the program ships it`, "title")],
    ["Altered in the folder of assumptions", "Used here", "As shipped"].map((each) => text(each, "head")),
    ...alterations.map(({ what, found, shipped }) => [text(what), text(found), text(shipped)]),
  ];
}
