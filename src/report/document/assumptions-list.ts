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
  /** What a board calls it. */
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
  /** Other words of the trade for it, by which it is found too. */
  readonly synonyms: string;
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
  const { id, title, synonyms = [], value, basis, source, note } = entry;
  const override = own.get(id);
  return {
    id,
    name: capitalised(title),
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
    synonyms: synonyms.join(", "),
  };
}

function setText(id: string, { agency }: AssumptionSet): string | undefined {
  const found = agency?.values.find((each) => each.id === id);
  return agency && found && `${found.value}, of ${agency.name}, version ${agency.version}: ${found.reason}`;
}

/** Rows that pass the filter and hold every word of the search: those that have it in their title first, bare ids last. */
export function assumptionRows(
  reading: AssumptionReading,
  filter: AssumptionFilter,
  search: string,
): AssumptionRow[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean).map(stem);
  return [...reading.assumptions.entries.values()]
    .map((entry) => assumptionRow(entry, reading))
    .filter((row) => passes(row, filter))
    .map((row) => ({ row, ...foundIn(row, words) }))
    .filter(({ text }) => text < notFound)
    .toSorted(
      (one, other) =>
        one.text - other.text || one.at - other.at || one.row.name.localeCompare(other.row.name, "en"),
    )
    .map(({ row }) => row);
}

/** Without the ending of a plural: who types divers finds a diver. */
const stem = (word: string): string => word.replace(/(?<=.{5})ies$|(?<=.{2}[^s])s$/, "");

const notFound = 7;

/** Which of an assumption's texts, in order, holds the last of the words, and where: the earlier, the nearer to what it is. */
function foundIn(
  { id, name, basis, citation, note, value, synonyms }: AssumptionRow,
  words: readonly string[],
): { readonly text: number; readonly at: number } {
  const texts = [name, synonyms, note, basis, citation, value, id].map((each) => each.toLowerCase());
  const found = words.map((word) => texts.findIndex((each) => startsWord(each, word)));
  const text = found.includes(-1) ? notFound : Math.max(0, ...found);
  return { text, at: texts[text]?.indexOf(words[found.indexOf(text)] ?? "") ?? 0 };
}

/** Whether a word of the text begins so, or is it where it is short: "pig" is not in "spigot", nor "DO" in "docks". */
const startsWord = (text: string, word: string): boolean =>
  /[^a-z]/.test(word)
    ? text.includes(word)
    : text
        .split(/[^\p{L}\p{N}]+/u)
        .some((each) => each === word || (word.length > 2 && each.startsWith(word)));

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
