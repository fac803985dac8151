import type { Answering, StudyText } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { StudyWriting, Writer } from "../../app/study-writing.js";
import { InputError } from "../../study/reading/problems.js";

/** @throws InputError for a study that cannot be computed as it is */
export async function mustBeComplete(answers: Pick<Answering, "ask">, study: StudyText): Promise<void> {
  const balance = await answers.ask("balance", study);
  if (!balance.line) throw new InputError(balance.subject, balance.problems);
}

/** Computes a study and keeps it as a new one. @throws InputError, with nothing kept; StoreError */
export async function keepComplete(
  { studies, answers }: { readonly studies: Pick<StudyWriting, "create">; readonly answers: Answering },
  study: StudyText,
  writer: Writer,
): Promise<StudyEntry> {
  await mustBeComplete(answers, study);
  return studies.create(study.text, writer, study.fileName);
}
