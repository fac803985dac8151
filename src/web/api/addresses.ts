import type { ListedStudy } from "../../app/study-entry.js";
import type { RevisionCard } from "../../store/records.js";

export const studyAddress = (id: string): string => `/api/studies/${id}`;

export const revisionAddress = (id: string, revision: number): string =>
  `${studyAddress(id)}/revisions/${revision}`;

/** A study's card with the addresses of what belongs to it. */
export function linkedStudy({ id, name, revision, ...rest }: ListedStudy) {
  const self = studyAddress(id);
  const { savedAt, author, note, origin, fileName, isDamaged, isExample, state, createdAt, stateChangedAt } =
    rest;
  return {
    ...{ id, name, revision, savedAt, author, note, origin, fileName, isDamaged },
    ...{ isExample, state, createdAt, stateChangedAt },
    links: {
      self,
      text: `${self}/text`,
      revisions: `${self}/revisions`,
      results: `${self}/results`,
      overrides: `${self}/overrides`,
      page: `/studies/${id}`,
    },
  };
}

export function linkedRevision({
  id,
  name,
  revision,
  savedAt,
  author,
  note,
  origin,
  fileName,
  isDamaged,
}: RevisionCard) {
  return {
    ...{ id, name, revision, savedAt, author, note, origin, fileName, isDamaged },
    links: { self: revisionAddress(id, revision) },
  };
}
