import type { ComparedRun, StudyDifferences } from "../../study/compared/compared.js";
import { figures } from "../../study/compared/figures.js";
import { figureText } from "../words/figure-text.js";
import { capitalised, type Formatter } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import type { SideNames } from "./explained-view.js";

interface Side {
  readonly run: ComparedRun;
  readonly format: Formatter;
}

/** What each study asks for, beside each other; absent where both ask for the same option, which stands among all of them. */
export function requestedTable(
  { left, right }: { readonly left: Side; readonly right: Side },
  { results, requested }: StudyDifferences,
  names: SideNames,
): TableView | undefined {
  const [one, other] = [left, right].map(({ run }) => run.document.study.requestedOption);
  if (one === other) return undefined;
  const ofOne = results.filter(({ of, id }) => of === "option" && id === one);
  const ofOther = results.filter(({ of, id }) => of === "option" && id === other);
  const shown = [...new Set([...ofOne, ...ofOther].map(({ figure }) => figure))];
  const rows = shown.map((figure) =>
    row(
      capitalised(figures[figure].name),
      num(figureText(figure, ofOne.find((each) => each.figure === figure)?.left, left.format)),
      num(figureText(figure, ofOther.find((each) => each.figure === figure)?.right, right.format)),
    ),
  );
  return {
    id: "table-requested",
    caption: "What each study requests, at central values",
    head: head("Figure", num(`${names.left}: ${requested.left}`), num(`${names.right}: ${requested.right}`)),
    rows,
  };
}
