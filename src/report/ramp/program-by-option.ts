import { at } from "../../lists.js";
import { totalOf } from "../../model/money/line.js";
import type { OptionResult } from "../../model/option.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { addingUp, addingUpNote, stepFor } from "../words/adding-up.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** What a year of each option costs, in the few sums that a board asks for; the lines are in an appendix. */
export function programByOptionTable(context: ReportContext): TableView {
  const { format, priceYear, infestedSince } = context;
  const options = allOptions(context);
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
    rows: options.map(({ option }, index) => {
      const own = addingUp(at(parts, index), step);
      return row(option.name, ...[...own.parts, own.sum].map((amount) => num(format.exactMoney(amount))));
    }),
    note: `${addingUpNote(format.exactMoney(step))} Appendix ${appendixLetter("program-detail")} has the lines.`,
  };
}

const staffGroups: ReadonlySet<string> = new Set(["wages", "supervision", "training"]);
const thingGroups: ReadonlySet<string> = new Set([
  "hot-wash",
  "vehicles",
  "site-works",
  "equipment",
  "seals",
]);

function partsOf({ programLines }: OptionResult): number[] {
  const costs = programLines.filter(({ type }) => type !== "revenue");
  const revenue = programLines.filter(({ type }) => type === "revenue");
  const staff = costs.filter(({ group }) => staffGroups.has(group));
  const things = costs.filter(({ group }) => thingGroups.has(group));
  const others = costs.filter(({ group }) => !staffGroups.has(group) && !thingGroups.has(group));
  return [staff, things, others, revenue].map((lines) => totalOf(lines).toNumber());
}
