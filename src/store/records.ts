export type StudyState = "active" | "archived" | "deleted";

/** How a revision came about. */
export type RevisionOrigin = "upload" | "form" | "restore" | "copy" | "import" | "api";

/** What a writer tells of a revision beside its text. */
export interface Writing {
  /** As found in the text, or what to call it until it has a name. */
  readonly name: string;
  /** ISO 8601, UTC. */
  readonly savedAt: string;
  /** As typed; empty where nobody gave a name. */
  readonly author: string;
  /** What was changed, in the writer's words. */
  readonly note: string;
  readonly origin: RevisionOrigin;
  readonly fileName: string;
}

/** A revision without its text. */
export interface RevisionCard extends Writing {
  /** The study's id. */
  readonly id: string;
  /** Counts from 1 in each study. */
  readonly revision: number;
  /** Whether what is kept is not what was saved: it does not match its digest, and its text is not given out. */
  readonly isDamaged: boolean;
}

/** A kept revision of a study: its file to the byte. */
export interface KeptRevision extends RevisionCard {
  readonly text: string;
}

/** A study by its latest revision. */
export interface StudyCard extends RevisionCard {
  readonly state: StudyState;
  readonly createdAt: string;
  readonly stateChangedAt: string;
}

export interface KeptStudy extends StudyCard {
  readonly text: string;
}

/** An issued report without what is long. */
export interface IssueCard {
  readonly studyId: string;
  /** Counts from 1 in each study. */
  readonly number: number;
  /** ISO 8601, UTC. */
  readonly issuedAt: string;
  /** As typed; empty where nobody gave a name. */
  readonly author: string;
  readonly note: string;
  readonly revision: number;
  readonly studyName: string;
  readonly engineVersion: string;
  /** Of the draws behind the odds; null where none were drawn. */
  readonly seed: number | null;
  /** SHA-256, in hexadecimal digits. */
  readonly digest: string;
}

export interface ListedIssue extends IssueCard {
  /** False of what was issued before the board's part was a document of its own. */
  readonly hasBoardPart: boolean;
}
