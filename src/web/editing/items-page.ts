import type { BalanceState } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf, shownText } from "../../editor/form-values.js";
import { labelOf } from "../../editor/labels.js";
import { structureKindFields } from "../../editor/table/structure-columns.js";
import type { Problem } from "../../study/reading/problems.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { itemName, partName, problemsOf } from "./edit-page.js";
import type { EditPlace } from "./edit-place.js";

/** The list of structures or of program options, each with a page of its own. */
export function itemsPage(
  entry: StudyEntry,
  balance: BalanceState,
  place: EditPlace,
  author: string,
): object {
  const draft = draftOf(entry.text, entry.fileName);
  const problems = problemsOf(draft, balance);
  const { part, href } = place;
  const items = itemsOf(childOf(draft.document, part.section));
  const isStructures = part.id === "structures";
  return workbenchPage(
    { entry, balance, part: part.id, title: partName(part) },
    {
      ...{ href, guide: part.guide, author, readOnly: entry.isExample || mayOnlyRead(), study: entry.id },
      revision: entry.revision,
      isStructures,
      kinds: [...structureKindFields().keys()].map((value) => ({
        value,
        label: labelOf(value),
        chosen: false,
      })),
      items: items.map((item, index) => ({
        ...{ href: `${href}/${index}`, name: itemName(draft.document, [part.section, index]) },
        kind: isStructures ? labelOf(shownText(childOf(item, "kind"))) : shownText(childOf(item, "id")),
        standing: itemStateOf(problems, part.section, index),
        acts: actsOf(`${part.section}/${index}`, index, items.length),
      })),
      tableHref: `/studies/${entry.id}/structures/table`,
    },
  );
}

function itemStateOf(problems: readonly Problem[], section: string, index: number): string {
  const own = problems.filter(({ at }) => at?.[0] === section && at[1] === index);
  const missing = own.filter(({ found }) => found === "nothing").length;
  const unusual = own.filter((problem) => problem.unusual).length;
  const wrong = own.length - missing - unusual;
  const counts = [
    missing > 0 ? `${missing} missing` : "",
    wrong > 0 ? `${wrong} to mend` : "",
    unusual > 0 ? `${unusual} unusual` : "",
  ];
  return counts.filter(Boolean).join(", ") || "complete";
}

const actsOf = (name: string, index: number, count: number) => [
  ...(index > 0 ? [{ value: `up:${name}`, label: "Up" }] : []),
  ...(index < count - 1 ? [{ value: `down:${name}`, label: "Down" }] : []),
  { value: `remove:${name}`, label: "Remove" },
];
