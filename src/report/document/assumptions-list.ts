import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { isJudged } from "../../assumptions/entry-marks.js";
import { rangeText, unitText } from "../words/assumption-text.js";
import { capitalised } from "../words/format.js";
import { otherWords } from "./plain-words.js";

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
  /** Other words for what it is about, by which it is found too. */
  readonly otherWords: string;
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
    otherWords: otherWords(`${title ?? id} ${note}`),
  };
}

function setText(id: string, { agency }: AssumptionSet): string | undefined {
  const found = agency?.values.find((each) => each.id === id);
  return agency && found && `${found.value}, of ${agency.name}, version ${agency.version}: ${found.reason}`;
}

/** Rows that pass the filter and hold every word of the search: those that have it in their name first, bare ids last. */
export function assumptionRows(
  reading: AssumptionReading,
  filter: AssumptionFilter,
  search: string,
): AssumptionRow[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return [...reading.assumptions.entries.values()]
    .map((entry) => assumptionRow(entry, reading))
    .filter((row) => passes(row, filter))
    .map((row) => ({ row, place: placeOf(row, words) }))
    .filter(({ place }) => place < notFound)
    .toSorted((one, other) => one.place - other.place || one.row.name.localeCompare(other.row.name, "en"))
    .map(({ row }) => row);
}

const notFound = 4;

/** The less, the nearer to the name the words are found. */
function placeOf(
  { id, name, basis, citation, note, value, otherWords }: AssumptionRow,
  words: readonly string[],
) {
  const holds = (...texts: readonly string[]) => {
    const text = texts.join(" ").toLowerCase();
    return words.every((word) => text.includes(word));
  };
  const title = name === id ? "" : name;
  if (title !== "" && holds(title)) return 0;
  if (title !== "" && holds(title, otherWords, note)) return 1;
  if (holds(title, otherWords, note, basis, citation, value)) return 2;
  return holds(title, otherWords, note, basis, citation, value, id) ? 3 : notFound;
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
