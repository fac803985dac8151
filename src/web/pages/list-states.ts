import { setTimeout as pause } from "node:timers/promises";
import { type Answering, type BalanceState, type StudyText, textOf } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { ListedStudy } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { partStateText, studyParts } from "../../editor/parts.js";
import { partName } from "../editing/edit-page.js";

/**
 * The answer in few words: "Pays: $80,300/yr damage avoided, $142,000/yr spent"; empty where there is none yet. Examples are
 * worked out ahead, and not waited for.
 */
export async function answersIn(
  { studies, answers }: { readonly studies: Studies; readonly answers: Answering },
  cards: readonly ListedStudy[],
): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  const ofExample = exampleBalances(answers);
  const each = cards.map(async ({ id, isDamaged, isExample }) => {
    const entry = isDamaged ? undefined : studies.find(id);
    if (!entry) return;
    const asked = textOf(entry);
    const line = (isExample ? ofExample(asked) : await answers.ask("balance", asked))?.line;
    if (line) found.set(id, `${line.answer}: ${sideText(line.rack)}, ${sideText(line.ramp)}`);
  });
  await Promise.race([Promise.allSettled(each), pause(patienceMilliseconds)]);
  return new Map(found);
}

/** One that failed, or is remembered no more, is there at the next view. The first page of a server does without workers. */
function exampleBalances(answers: Answering): (asked: StudyText) => BalanceState | undefined {
  const mayAsk = answers.hasBegun();
  return (asked) => {
    const known = answers.known("balance", asked);
    if (!known && mayAsk) answers.ask("balance", asked).catch(() => undefined);
    return known;
  };
}

/** Studies that take longer have their answer when the list is next looked at. */
const patienceMilliseconds = 250;

const sideText = ({ label, value }: { readonly label: string; readonly value: string }) =>
  `${label.charAt(0).toLowerCase()}${label.slice(1)} ${value}`;

/** What is missing in studies of a list; each revision is read once. */
export function listStates(studies: Studies): (card: ListedStudy) => string {
  const known = new Map<string, { readonly savedAt: string; readonly text: string }>();
  return ({ id, revision, savedAt, isDamaged, isExample }) => {
    if (isExample) return "";
    if (isDamaged) return `Revision ${revision} is damaged. Open the study to go on from an earlier one.`;
    const before = known.get(id);
    if (before?.savedAt === savedAt) return before.text;
    const entry = studies.find(id);
    const text = entry ? missingIn(entry.text, entry.fileName) : "";
    known.set(id, { savedAt, text });
    return text;
  };
}

function missingIn(text: string, fileName: string): string {
  const { parts } = draftOf(text, fileName);
  const unfinished = studyParts.flatMap((part) => {
    const state = parts.get(part.id);
    return state && state.state !== "complete" ? [`${partName(part)}: ${partStateText(state)}`] : [];
  });
  return unfinished.length === 0 ? "" : `Not finished. ${unfinished.join("; ")}`;
}
