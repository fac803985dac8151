import type { BalanceState } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { counted } from "../../counted.js";
import type { RevisionCard, RevisionOrigin } from "../../store/records.js";
import { type Sitting, sittingsOf } from "./sittings.js";
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
  studies: Pick<Studies, "revisions" | "versionNames">,
): object {
  const { id, isExample, revision: latest } = entry;
  const cards = studies.revisions(id);
  const names = studies.versionNames(id);
  const before = new Map(cards.map((card, index) => [card.revision, cards[index + 1]]));
  const row = (card: RevisionCard) => rowOf(card, before.get(card.revision), { latest, names });
  return workbenchPage(
    { entry, balance, part: "revisions", title: "Revisions" },
    {
      introduction: isExample
        ? "An example has one revision. Make a study from it to change it."
        : "Every save is kept as a revision; those of one sitting stand together. Give a version a name to find it again.",
      canRestore: !isExample && !mayOnlyRead() && cards.length > 1,
      canName: !isExample && !mayOnlyRead(),
      latest,
      links: { compare: `/compare?left=${id}` },
      sittings: sittingsOf(cards).map((sitting, index) => ({
        ...sittingView(sitting, names),
        isOpen: index === 0,
        rows: sitting.cards.map(row),
      })),
    },
  );
}

/** "2026-11-28, 09:10 to 09:52, Ada: 14 revisions". */
function sittingView({ author, cards }: Sitting, names: ReadonlyMap<number, string>) {
  const [last, first] = [cards[0], cards.at(-1)];
  const [from, until] = [first, last].map((card) => (card?.savedAt ?? "").slice(0, 16).replace("T", " "));
  const [day = "", end = ""] = (until ?? "").split(" ");
  const begin = (from ?? "").startsWith(day) ? (from ?? "").slice(day.length + 1) : (from ?? "");
  const span = cards.length === 1 || begin === end ? `${day} ${end}` : `${day}, ${begin} to ${end}`;
  const { id = "", revision = 0 } = last ?? {};
  return {
    told: `${span.trim() || "As made"}, ${author || "no name given"}: ${counted(cards.length, "revision")}`,
    names: cards.flatMap((card) => names.get(card.revision) ?? []),
    revision,
    name: names.get(revision) ?? "",
    naming: `/studies/${id}/revisions/${revision}/name`,
  };
}

interface RowMeans {
  readonly latest: number;
  readonly names: ReadonlyMap<number, string>;
}

function rowOf(card: RevisionCard, before: RevisionCard | undefined, { latest, names }: RowMeans): object {
  const { id, revision, savedAt, author, note, origin, isDamaged } = card;
  const address = `/studies/${id}/revisions/${revision}`;
  return {
    revision,
    isDamaged,
    savedAt: savedAt === "" ? "" : savedAt.slice(0, 16).replace("T", " "),
    author: author === "" ? "not given" : author,
    note: note === "" ? origins[origin] : note,
    name: names.get(revision) ?? "",
    view: address,
    file: `${address}/study`,
    before: before?.revision,
    compare: before && !before.isDamaged && `/compare?left=${id}@${before.revision}&right=${id}@${revision}`,
    restore: revision === latest ? undefined : `${address}/restore`,
  };
}
