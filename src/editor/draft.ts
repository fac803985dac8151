import { LRUCache } from "lru-cache";
import { type ReadDraft, readDraft } from "../study/reading/judged.js";
import { InputError, type Problem, valueAt } from "../study/reading/problems.js";
import type { Writing } from "./amounts/units-offered.js";
import { type PartId, type PartState, partStates } from "./parts.js";
import { rawOf } from "./study-text.js";

/** An unfinished study. */
export interface Draft extends ReadDraft {
  /** The parsed text; an empty group if it cannot be read. */
  readonly document: unknown;
  readonly parts: ReadonlyMap<PartId, PartState>;
  readonly writing: Writing;
}

interface Named {
  readonly text: string;
  readonly name: string;
}

const drafts = new LRUCache<string, Draft, Named>({
  max: 8,
  memoMethod: (_key, _draft, { context: { text, name } }) => draftIn(text, name),
});

/** Reads an unfinished study. The last few are cached: pages and their readers ask repeatedly. */
export const draftOf = (text: string, name: string): Draft =>
  drafts.memo(`${name}\n${text}`, { context: { text, name } });

function draftIn(text: string, name: string): Draft {
  const { document, unread } = documentOf(text, name);
  const read = readDraft(document);
  const problems = [...unread, ...read.problems];
  return { ...read, document, problems, parts: partStates(problems), writing: writingOf(document) };
}

function documentOf(text: string, name: string): { document: unknown; unread: readonly Problem[] } {
  try {
    const document = rawOf(text, name);
    const isGroup = typeof document === "object" && document !== null && !Array.isArray(document);
    return { document: isGroup ? document : {}, unread: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { document: {}, unread: error.problems };
  }
}

/** How a study writes its quantities; US units and dollars until it says otherwise. */
function writingOf(document: unknown): Writing {
  const currency = textAt(document, ["money", "currency"]);
  return {
    system: textAt(document, ["study", "units"]) === "si" ? "si" : "us",
    currency: /^[A-Z]{3}$/.test(currency) ? currency : "USD",
  };
}

function textAt(document: unknown, at: readonly string[]): string {
  const found = valueAt(document, at);
  return typeof found === "string" ? found : "";
}
