import type { Studies } from "../../app/studies.js";
import type { ListedStudy } from "../../app/study-entry.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { sentence } from "../../study/reading/problems.js";
import type { Explained } from "../explained.js";

/** The list of studies, with what to do when there are none of one's own. */
export function listPage(
  studies: Studies,
  missingIn: (card: ListedStudy) => string,
  answers: ReadonlyMap<string, string>,
): object {
  const shown = studies.list().map((card) => ({
    ...listed(card),
    isExample: card.isExample,
    answer: answers.get(card.id) ?? "",
    note: card.note,
    missing: card.isExample ? "" : missingIn(card),
  }));
  return {
    title: "Studies",
    assets: linkedAssets,
    own: shown.filter(({ isExample }) => !isExample),
    examples: shown.filter(({ isExample }) => isExample),
    archived: studies.inState("archived").map(listed),
    deleted: studies.inState("deleted").map(listed),
  };
}

function listed({ id, name, isExample, isDamaged, revision, savedAt, author }: ListedStudy) {
  const by = author === "" ? "" : `, ${author}`;
  return {
    href: `/studies/${id}`,
    name,
    detail: isExample
      ? "invented example"
      : `revision ${revision}${isDamaged ? ", damaged" : ""}, saved ${savedAt.slice(0, 16).replace("T", " ")} UTC${by}`,
  };
}

/** How what was refused reached the server. */
export type Way = "file" | "form" | "address";

export function problemPage(explained: Explained, way: Way): object {
  return {
    ...explained,
    assets: linkedAssets,
    problems: explained.problems.map(sentence),
    way: { [way]: true },
  };
}
