import type { UnfinishedBalance } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { problemText } from "../../editor/form-node.js";
import { isInPart, partStates, partStateText, studyParts } from "../../editor/parts.js";
import { sentence } from "../../study/reading/problems.js";
import { partName, placeWords } from "../editing/edit-page.js";
import { workbenchPage } from "./workbench-page.js";

const mostShown = 8;

/** What keeps a study from having results, part by part. */
export function unfinishedPage(entry: StudyEntry, balance: UnfinishedBalance, part: string): object {
  const { problems } = balance;
  const states = partStates(problems);
  const groups = studyParts.flatMap((each) => {
    const own = problems.filter(({ at }) => isInPart(each, at));
    const state = states.get(each.id);
    if (own.length === 0 || !state) return [];
    const rest = own.length - mostShown;
    return [
      {
        name: partName(each),
        href: `/studies/${entry.id}/edit/${each.id}`,
        standing: partStateText(state),
        problems: own
          .slice(0, mostShown)
          .map((problem) => `${placeWords(problem.at ?? [], 1)}: ${problemText(problem)}`),
        more: rest > 0 ? `and ${rest} more` : "",
      },
    ];
  });
  const others = problems.filter(({ at }) => !studyParts.some((each) => isInPart(each, at))).map(sentence);
  return workbenchPage({ entry, balance, part, title: "Not finished yet" }, { groups, others });
}
