import type { ComparedRun } from "../../study/compared/compared.js";
import { figures } from "../../study/compared/figures.js";
import type { ResultDifference } from "../../study/compared/result-differences.js";
import { changeText, figureText } from "../words/figure-text.js";
import { capitalised, formatter } from "../words/format.js";
import { groupRow, head, num, row, type TableView } from "../words/view-types.js";

/**
 * What a change of a study does to the board's figures, in one table with all of them, changed or not.
 * @param results what differs from the study before
 */
export function effectTable(
  after: ComparedRun,
  results: readonly ResultDifference[],
  names: readonly [string, string],
): TableView {
  const { money, study, options } = after.document;
  const format = formatter(money.currency, study.units);
  const { baseline } = after.comparison;
  const shownOptions = [baseline.option.id, study.requestedOption];
  return {
    id: "table-effect",
    caption: "The board’s figures before and after",
    head: head("Figure", num(names[0]), num(names[1]), num("Change")),
    rows: shownOptions.flatMap((id) => [
      groupRow(options.find((option) => option.id === id)?.name ?? id),
      ...results
        .filter((each) => each.of === "option" && each.id === id)
        .map(({ figure, left, right, difference }) =>
          row(
            capitalised(figures[figure].name),
            num(figureText(figure, left, format)),
            num(figureText(figure, right, format)),
            num(
              difference === undefined
                ? ""
                : difference === 0
                  ? "none"
                  : changeText(figure, difference, format),
            ),
          ),
        ),
    ]),
    note: "Changes of shares are in percentage points.",
  };
}
