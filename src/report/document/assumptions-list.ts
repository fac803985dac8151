import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { isJudged } from "../../assumptions/entry-marks.js";
import { rangeText, unitText } from "../words/assumption-text.js";
import { capitalised } from "../words/format.js";

/** What a table of assumptions shows: those that the study uses, those judged of them, or all. */
export const assumptionFilters = ["used", "judged", "own", "all"] as const;
export type AssumptionFilter = (typeof assumptionFilters)[number];

/** An assumption with how a study stands to it. */
export interface AssumptionRow {
  readonly id: string;
  /** What a board calls it, or else its id. */
  readonly name: string;
  /** With its unit. */
  readonly value: string;
  readonly range: string;
  readonly basis: string;
  readonly isJudged: boolean;
  readonly citation: string;
  readonly note: string;
  /** Whether the study's figures rest on it. */
  readonly use: "used" | "not used" | "not known yet";
  /** The study's own value as typed, if it has one. */
  readonly own: string | undefined;
  readonly reason: string | undefined;
  /** What the agency's set has for it, with its reason. */
  readonly set: string | undefined;
}

export interface AssumptionReading {
  readonly assumptions: AssumptionSet;
  /** Undefined for a study that cannot be computed yet. */
  readonly used: ReadonlySet<string> | undefined;
  readonly own: ReadonlyMap<string, { readonly value: string; readonly reason: string }>;
}

export function assumptionRow(
  entry: Assumption,
  { assumptions, used, own }: AssumptionReading,
): AssumptionRow {
  const { id, title, value, basis, source, note } = entry;
  const override = own.get(id);
  return {
    id,
    name: title === undefined ? id : capitalised(title),
    value: `${value} ${unitText(entry)}`.trim(),
    range: rangeText(entry),
    basis,
    isJudged: isJudged(entry),
    citation: assumptions.sources.get(source)?.citation ?? source,
    note,
    use: used === undefined ? "not known yet" : used.has(id) ? "used" : "not used",
    own: override?.value,
    reason: override?.reason,
    set: setText(id, assumptions),
  };
}

function setText(id: string, { agency }: AssumptionSet): string | undefined {
  const found = agency?.values.find((each) => each.id === id);
  return agency && found && `${found.value}, of ${agency.name}, version ${agency.version}: ${found.reason}`;
}

/** Rows that pass the filter and hold every word of the search, in the order of the ids. */
export function assumptionRows(
  reading: AssumptionReading,
  filter: AssumptionFilter,
  search: string,
): AssumptionRow[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return [...reading.assumptions.entries.values()]
    .toSorted((one, other) => (one.id < other.id ? -1 : 1))
    .map((entry) => assumptionRow(entry, reading))
    .filter((row) => passes(row, filter))
    .filter((row) => {
      const { id, name, basis, citation, note, value } = row;
      const text = [id, name, basis, citation, note, value].join(" ").toLowerCase();
      return words.every((word) => text.includes(word));
    });
}

/** Of a study that cannot be computed yet, all count as used. */
function passes({ use, own, isJudged: judged }: AssumptionRow, filter: AssumptionFilter): boolean {
  switch (filter) {
    case "all":
      return true;
    case "own":
      return own !== undefined;
    case "used":
      return use !== "not used";
    case "judged":
      return judged && use !== "not used";
  }
}
