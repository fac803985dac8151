import type { BalanceState } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { isStep } from "../../app/undo.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { partStates, partStateText } from "../../editor/parts.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { editedParts, keptParts, readParts, type WorkbenchPart } from "./workbench-parts.js";

/** What every page of the workbench is made from: see views/partials/workbench.hbs. */
interface WorkbenchFrame {
  readonly entry: StudyEntry;
  readonly balance: BalanceState;
  /** Id of the part that is shown, from workbench-parts.ts. */
  readonly part: string;
  readonly title: string;
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
      standing: standingLine(entry),
      steps: stepsView(entry, frame.part),
      balance: balanceView(balance),
      parts: [editedParts, readParts, keptParts].map((parts) => ({
        links: parts.map((part) => partLink(part, frame, marksOf(balance))),
      })),
    },
  };
}

export function standingLine({ isExample, revision, savedAt, author }: StudyEntry): string {
  if (isExample) return "An invented example: make a study from it to change it";
  const by = author === "" ? "" : ` by ${author}`;
  return `Revision ${revision}, saved ${savedAt.slice(0, 16).replace("T", " ")} UTC${by}`;
}

const readWithSteps = new Set(["records", "assumptions", "first", "revisions"]);

/** Undo and redo, on pages where a study is changed. */
export function stepsView(entry: StudyEntry, part: string): object | undefined {
  const { id, revision, note, isExample } = entry;
  const isChanged = readWithSteps.has(part) || editedParts.some((each) => each.id === part);
  if (isExample || mayOnlyRead() || !isChanged) return undefined;
  const said = note === "" || isStep(entry) ? "" : note.slice(0, longestStep);
  return {
    study: id,
    revision,
    canUndo: revision > 1,
    canRedo: isStep(entry),
    said: said.length < note.length && said !== "" ? `${said}…` : said,
  };
}

const longestStep = 48;

function partLink({ id, name, path }: WorkbenchPart, { entry, part }: WorkbenchFrame, marks: Marks) {
  return {
    id,
    name,
    href: `/studies/${entry.id}${path}`,
    isHere: id === part,
    slow: slowWords(path),
    mark: marks[id] ?? "",
  };
}

const slowWords = (path: string) =>
  path.includes(".pdf") ? "Being printed: it takes some seconds, and opens by itself." : "";

type Marks = Readonly<Record<string, string>>;

/** How far each part is, by its id; nothing is said of a study that is complete. */
export function marksOf(balance: BalanceState): Marks {
  if (balance.line) return {};
  return Object.fromEntries(
    [...partStates(balance.problems)].map(([id, standing]) => [id, partStateText(standing)]),
  );
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
