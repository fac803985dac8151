import type { BalanceState } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import type { RevisionCard, RevisionOrigin } from "../../store/records.js";
import { workbenchPage } from "./workbench-page.js";

/** What stands for a note where the writer left none. */
const origins: Readonly<Record<RevisionOrigin, string>> = {
  upload: "Uploaded",
  form: "Edited",
  restore: "Restored",
  copy: "Copied",
  import: "Imported",
  api: "Sent by a program",
};

/** All revisions of a study: see them, compare each with the one before, take one back. */
export function revisionsPage(
  entry: StudyEntry,
  balance: BalanceState,
  studies: Pick<Studies, "revisions">,
): object {
  const { id, isExample, revision: latest } = entry;
  const cards = studies.revisions(id);
  return workbenchPage(
    { entry, balance, part: "revisions", title: "Revisions" },
    {
      introduction: isExample
        ? "An example has one revision. Make a study from it to change it."
        : "Every save is kept as a revision.",
      canRestore: !isExample && !mayOnlyRead() && cards.length > 1,
      latest,
      links: { compare: `/compare?left=${id}` },
      rows: cards.map((card, index) => rowOf(card, cards[index + 1], latest)),
    },
  );
}

function rowOf(card: RevisionCard, before: RevisionCard | undefined, latest: number): object {
  const { id, revision, savedAt, author, note, origin, isDamaged } = card;
  const address = `/studies/${id}/revisions/${revision}`;
  return {
    revision,
    isDamaged,
    savedAt: savedAt === "" ? "" : savedAt.slice(0, 16).replace("T", " "),
    author: author === "" ? "not given" : author,
    note: note === "" ? origins[origin] : note,
    view: address,
    file: `${address}/study`,
    before: before?.revision,
    compare: before && !before.isDamaged && `/compare?left=${id}@${before.revision}&right=${id}@${revision}`,
    restore: revision === latest ? undefined : `${address}/restore`,
  };
}
