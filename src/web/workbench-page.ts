import { linkedAssets } from "../report/html.js";
import type { BalanceState } from "./balance-desk.js";
import type { ShelfEntry } from "./shelf-reading.js";
import { editedParts, keptParts, readParts, type WorkbenchPart } from "./workbench-parts.js";

/** What every page of the workbench is made from: see views/partials/workbench.hbs. */
export interface WorkbenchFrame {
  readonly entry: ShelfEntry;
  readonly balance: BalanceState;
  /** Id of the part that is shown, from workbench-parts.ts. */
  readonly part: string;
  readonly title: string;
  /** Marks beside the names of parts, by id: "complete", "3 to mend". */
  readonly marks?: Readonly<Record<string, string>>;
}

/** The view of a page in the layout of the workbench, with the page's own fields beside those of the frame. */
export function workbenchPage<Content extends object>(frame: WorkbenchFrame, content: Content): object {
  const { entry, balance, title } = frame;
  return {
    ...content,
    title,
    assets: linkedAssets,
    bench: {
      study: { id: entry.id, name: entry.name, href: `/studies/${entry.id}` },
      standing: entry.isExample
        ? "An invented example: make a study from it to change it"
        : `Revision ${entry.revision}, saved ${entry.savedAt.slice(0, 16).replace("T", " ")} UTC`,
      balance: balanceView(balance),
      parts: [editedParts, readParts, keptParts].map((parts) => ({
        links: parts.map((part) => partLink(part, frame)),
      })),
    },
  };
}

function partLink({ id, name, path }: WorkbenchPart, { entry, part, marks }: WorkbenchFrame) {
  return { name, href: `/studies/${entry.id}${path}`, isHere: id === part, mark: marks?.[id] ?? "" };
}

/** The head of a page, also sent by itself once something was saved. */
export function balanceView(balance: BalanceState): object {
  if (balance.line) return { line: balance.line };
  const count = balance.problems.length;
  return {
    line: undefined,
    missing: count === 1 ? "One thing is missing or wrong" : `${count} things are missing or wrong`,
  };
}
