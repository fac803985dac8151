/** A page of the workbench, as the column at the left lists it. */
export interface WorkbenchPart {
  readonly id: string;
  readonly name: string;
  /** Address after that of the study. */
  readonly path: string;
}

/** Parts of a study that are edited, in the order in which a person gathers the data: who pays before what is paid for. */
export const editedParts = [
  { id: "names", name: "Names and purpose", path: "/edit/names" },
  { id: "lake", name: "Lake and water", path: "/edit/lake" },
  { id: "levels", name: "Levels and drawdown", path: "/edit/levels" },
  { id: "money", name: "Money and who pays", path: "/edit/money" },
  { id: "structures", name: "Structures", path: "/edit/structures" },
  { id: "boats", name: "Boats", path: "/edit/boats" },
  { id: "options", name: "Program options", path: "/edit/options" },
  { id: "printed", name: "What is printed", path: "/edit/printed" },
] as const satisfies readonly WorkbenchPart[];

/** What follows from the parts. A new page that reads the study goes here. */
export const readParts: readonly WorkbenchPart[] = [
  { id: "records", name: "Records from files", path: "/records" },
  { id: "assumptions", name: "Assumptions", path: "/assumptions" },
  { id: "plans", name: "Plans of upkeep", path: "/plans" },
  { id: "results", name: "Results", path: "" },
  { id: "first", name: "Replace these first", path: "/first" },
  { id: "chance", name: "Where the chance comes from", path: "/chance" },
  { id: "odds", name: "How sure is it?", path: "/odds" },
  { id: "search", name: "The program that fits", path: "/search" },
  { id: "worked", name: "Worked by hand", path: "/worked" },
  { id: "report", name: "Report", path: "/report" },
  { id: "forms", name: "Downloads", path: "/forms" },
];

/** What was kept of the study. A new page about its revisions or issued reports goes here. */
export const keptParts: readonly WorkbenchPart[] = [
  { id: "revisions", name: "Revisions", path: "/revisions" },
  { id: "issues", name: "Issued reports", path: "/issues" },
  { id: "board-pdf", name: "Board’s part as PDF", path: "/report.pdf?part=board" },
  { id: "pdf", name: "Full report as PDF", path: "/report.pdf" },
  { id: "method", name: "Method with worked sheets, as PDF", path: "/method.pdf" },
  { id: "json", name: "Results as JSON", path: "/results.json" },
  { id: "file", name: "Study file", path: "/study" },
];
