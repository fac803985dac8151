import { appendices, appendixTitles, boardSections, boardTitles } from "../../study/format/report-schema.js";
import type { StudyDocument } from "../../study/format/schema.js";
import { ownTextHtml } from "../words/own-text.js";

/** The board's part alone, or all with the appendices that the author has not left out. */
export type ReportPart = "board" | "all";

/** What is printed, by names that a template can look up. */
export interface SectionsView {
  readonly show: Readonly<Record<string, boolean>>;
  /** Pages of the board's part that hold at least one of their sections. */
  readonly sheets: Readonly<Record<keyof typeof sheets, boolean>>;
  /** Titles of the appendices of the full report, where this edition has none. */
  readonly inFull: readonly string[];
  /** HTML of the author's own words by section; empty where there are none. */
  readonly own: Readonly<Record<string, string>>;
  /** What begins each page of the board's part after the first. */
  readonly boardContents: readonly { readonly id: string; readonly title: string }[];
  /** Appendices that are printed, in their order. */
  readonly contents: readonly { readonly id: string; readonly short: string }[];
  /** Where an edition has no appendices: what it refers to and where that is. */
  readonly elsewhere: string | undefined;
}

const sheets = {
  lake: ["lake", "infestation"],
  options: ["program", "balance"],
  budget: ["budget", "bearers"],
} as const;

/** "A. Cost lines" */
const shortTitle = (appendix: string) => (appendixTitles[appendix] ?? appendix).replace("Appendix ", "");

const pages = [sheets.lake, sheets.options, ["odds"], sheets.budget, ["left-out"]] as const;

/** @param empty sections of which the study has nothing to tell */
export function sectionsView(
  { report }: StudyDocument,
  part: ReportPart,
  empty: readonly string[] = [],
): SectionsView {
  const left = new Set<string>(report.leaveOut);
  const printed: string[] = [...boardSections, ...(part === "all" ? appendices : [])].filter(
    (id) => !left.has(id),
  );
  const missing = appendices.filter((id) => !printed.includes(id)).length;
  const ownOf = (section: string) =>
    report.texts.flatMap((each) => (each.section === section ? [ownTextHtml(each.text)] : [])).join("");
  const isBlank = (id: string) => empty.includes(id) && ownOf(id) === "";
  const isPrinted = (ids: readonly string[]) => ids.some((id) => printed.includes(id));
  return {
    sheets: {
      lake: isPrinted(sheets.lake),
      options: isPrinted(sheets.options),
      budget: isPrinted(sheets.budget),
    },
    inFull: part === "board" ? appendices.flatMap((id) => (left.has(id) ? [] : [shortTitle(id)])) : [],
    show: Object.fromEntries(
      [...boardSections, ...appendices].map((id) => [id, printed.includes(id) && !isBlank(id)] as const),
    ),
    own: Object.fromEntries(["board", ...boardSections].map((id) => [id, ownOf(id)] as const)),
    boardContents: pages
      .flatMap((ids) => ids.filter((id) => printed.includes(id) && !isBlank(id)).slice(0, 1))
      .map((id) => ({ id: `section-${id}`, title: boardTitles[id] })),
    contents: appendices
      .filter((id) => printed.includes(id) && !empty.includes(id))
      .map((id) => ({ id, short: shortTitle(id) })),
    elsewhere: elsewhereText(part, missing),
  };
}

function elsewhereText(part: ReportPart, missing: number): string | undefined {
  if (part === "board") {
    return "This is the board's part. Appendices that it names are in the full report, which is printed from the same study and has the same figures.";
  }
  return missing === 0
    ? undefined
    : "The author has left out some appendices that the text may name; the program prints them from the same study.";
}
