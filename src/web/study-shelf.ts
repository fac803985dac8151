import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { AssumptionSet } from "../assumptions/entry.js";
import { examplesFolder } from "../report/assets.js";
import type { StudyStore } from "../store/studies.js";
import { runStudy, type StudyRun } from "../study/compute.js";
import { readStudyText } from "../study/read.js";
import { type BalanceState, balanceDesk } from "./balance-desk.js";

export interface ShelfEntry {
  readonly id: string;
  readonly name: string;
  readonly isExample: boolean;
  readonly revision: number;
  readonly savedAt: string;
  readonly fileName: string;
  readonly text: string;
}

export interface StudyShelf {
  readonly list: () => ShelfEntry[];
  readonly find: (id: string) => ShelfEntry | undefined;
  readonly run: (entry: ShelfEntry) => StudyRun;
  /** The balance in one line, or what keeps the study from having one. Quicker than a run: no ranges. */
  readonly balance: (entry: Pick<ShelfEntry, "text" | "fileName">) => BalanceState;
  /** Checks a study and keeps it. @throws InputError, with nothing kept */
  readonly add: (text: string, fileName: string) => ShelfEntry;
}

const mostRunsKept = 16;

/** The examples and the kept studies, each with its computed run at hand. */
export function studyShelf(store: StudyStore, assumptions: AssumptionSet, now: () => Date): StudyShelf {
  const examples = readExamples();
  const runs = new Map<string, StudyRun>();
  const run = (entry: ShelfEntry): StudyRun => {
    const key = `${entry.id}/${entry.revision}`;
    const known = runs.get(key);
    if (known) return known;
    const made = runStudy(readStudyText(entry.text, entry.fileName), assumptions);
    runs.set(key, made);
    const oldest = runs.keys().next().value;
    if (runs.size > mostRunsKept && oldest !== undefined) runs.delete(oldest);
    return made;
  };
  return {
    list: () => [...store.list().map((kept) => ({ ...kept, isExample: false })), ...examples],
    find: (id) => {
      const kept = store.latest(id);
      return kept ? { ...kept, isExample: false } : examples.find((example) => example.id === id);
    },
    run,
    balance: balanceDesk(assumptions),
    add: (text, fileName) => {
      const made = runStudy(readStudyText(text, fileName), assumptions);
      const { name } = made.document.study;
      const kept = store.keep({
        id: freeId(slug(name), examples),
        name,
        savedAt: now().toISOString(),
        fileName,
        text,
      });
      return { ...kept, isExample: false };
    },
  };
}

function readExamples(): ShelfEntry[] {
  return readdirSync(examplesFolder)
    .filter((file) => file.endsWith(".yaml"))
    .sort()
    .reverse()
    .map((fileName) => {
      const text = readFileSync(join(examplesFolder, fileName), "utf8");
      const { name } = readStudyText(text, fileName).study;
      return {
        id: `example-${basename(fileName, ".yaml")}`,
        name,
        isExample: true,
        revision: 1,
        savedAt: "",
        fileName,
        text,
      };
    });
}

function slug(name: string): string {
  const words = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return words || "study";
}

const freeId = (id: string, examples: readonly ShelfEntry[]) =>
  examples.some((example) => example.id === id) ? `own-${id}` : id;
