import { z } from "zod";
import type { ListedStudy, StudyEntry } from "../../app/study-entry.js";
import type { StudyReading } from "../../app/study-reading.js";
import { DeletedStudyError, UnknownStudyError } from "../../store/errors.js";
import { sentFields } from "./sent-fields.js";

export const studyPath = sentFields({ id: z.string().meta({ description: "Id of the study" }) });

/** The number of a revision in an address. */
export const revisionParameter = z.coerce.number().int().min(1);

export const revisionPath = studyPath.extend({ revision: revisionParameter });

export const authorQuery = sentFields({
  author: z.string().max(200).default("").meta({ description: "Who changes the study, as typed" }),
});

/** @throws UnknownStudyError */
export function studyIn(studies: StudyReading, id: string): StudyEntry {
  const entry = studies.find(id);
  if (!entry) throw new UnknownStudyError(id);
  return entry;
}

/** A study without its file, which may be damaged. @throws UnknownStudyError */
export function cardIn(studies: StudyReading, id: string): ListedStudy {
  const card = studies.card(id);
  if (!card) throw new UnknownStudyError(id);
  return card;
}

/** A study that can be changed. @throws UnknownStudyError also for an example; DeletedStudyError; DamagedRevisionError */
export function ownStudyIn(studies: StudyReading, id: string): StudyEntry {
  const entry = studyIn(studies, id);
  if (entry.isExample) throw new UnknownStudyError(id);
  if (entry.state === "deleted") throw new DeletedStudyError(entry);
  return entry;
}
