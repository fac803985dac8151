import { DamagedIssueError, DamagedRevisionError } from "../store/errors.js";
import type { Explained } from "./explained.js";

type PartialExplanation = Pick<Explained, "status" | "title"> & Partial<Explained>;

/** What a reader is told of something kept that is not as it was saved. */
export function explainDamaged(error: unknown): PartialExplanation | undefined {
  if (error instanceof DamagedIssueError) {
    const { studyId, number, studyName } = error.card;
    return {
      status: 409,
      title: `Issued report ${number} on “${studyName}” is damaged as it is kept here`,
      advice: [error.message],
      links: [{ href: `/studies/${studyId}/issues`, label: "All issued reports on this study" }],
    };
  }
  return error instanceof DamagedRevisionError ? explainRevision(error) : undefined;
}

function explainRevision({ card, sound, isLatest }: DamagedRevisionError): PartialExplanation {
  const { id, name, revision } = card;
  const damaged = `What is kept of revision ${revision} does not match the digest that was kept with it: the disk, or a copy of the database, lost some of it. It is not shown and not computed; other studies are as they were.`;
  const explanation = { status: 409, title: `Revision ${revision} of “${name}” is damaged` };
  if (sound === undefined) {
    const wayOut =
      "No revision before it is sound. Whoever keeps this server can take the study from a backup.";
    return { ...explanation, advice: [damaged, wayOut] };
  }
  const before = `/studies/${id}/revisions/${sound}`;
  return {
    ...explanation,
    advice: [damaged, `Revision ${sound} before it is sound.`],
    links: [
      { href: before, label: `Results of revision ${sound}` },
      { href: `${before}/study`, label: `File of revision ${sound}` },
    ],
    actions: isLatest
      ? [
          {
            action: `${before}/restore`,
            label: `Go on from revision ${sound}`,
            fields: [{ name: "expected", value: String(revision) }],
          },
        ]
      : [],
  };
}
