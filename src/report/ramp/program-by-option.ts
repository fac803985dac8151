import { at } from "../../lists.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import type { ReportContext } from "../document/context.js";
import { addingUp, addingUpNote, stepFor } from "../words/adding-up.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** What a year of each option costs, in the few sums that a board asks for; the lines are in an appendix. */
export function programByOptionTable(context: ReportContext): TableView {
  const { format, priceYear, infestedSince } = context;
  const { options } = context.traced;
  const parts = options.map(partsOf);
  const step = stepFor(parts.flat());
  return {
    id: "table-program-options",
    caption: `What a year of each option costs ${infestedSince === undefined ? "while the lake is clean" : "in full"}, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Staff and their training"),
      num("Equipment, sites and vehicles"),
      num("Everything else"),
      num("Fees and other revenue"),
      num("A year"),
    ),
    rows: options.map(({ result }, index) => {
      const own = addingUp(at(parts, index), step);
      return row(
        result.option.name,
        ...[...own.parts, own.sum].map((amount) => num(format.exactMoney(amount))),
      );
    }),
    note: `${addingUpNote(format.exactMoney(step))} Appendix ${appendixLetter("program-detail")} has the lines.`,
  };
}

const partsOf = ({ program: { ofBoard } }: TracedOption): number[] =>
  [ofBoard.staff, ofBoard.things, ofBoard.others, ofBoard.revenue].map(Number);
