import { type CostLine, totalOf } from "../../model/money/line.js";
import type { ScheduleResult } from "../../model/schedules.js";
import type { ReportContext } from "../document/context.js";
import { matureMeanOf } from "../rack/infestation-view.js";
import { capitalised } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";

/** Other schedules in one table, beside the levels as operated. */
const mostBeside = 3;

/** A column for each schedule; the levels as operated stand first in every table. */
export function scheduleTables(context: ReportContext): TableView[] {
  const [own, ...others] = context.comparison.schedules;
  const count = Math.ceil(others.length / mostBeside);
  return Array.from({ length: count }, (_, index) => {
    const shown = [own, ...others.slice(index * mostBeside, (index + 1) * mostBeside)];
    return {
      id: `table-schedules-${index + 1}`,
      caption: `Schedules of levels side by side${count > 1 ? `, ${index + 1} of ${count}` : ""}, prices of ${context.priceYear}`,
      head: head("", ...shown.map(({ name }) => num(capitalised(name)))),
      rows: [...physicalRows(shown, context), ...moneyRows(own, shown, context)],
      note: note(context),
    };
  });
}

const note = ({ infestedSince }: ReportContext) =>
  `Following a schedule is costed against the levels as operated, mussels apart; flows through plants and intakes stay as they are, and water released earlier is not credited. Storage given up is that of the worst day. Mussels killed: on hard surface in the band that the schedule lays bare, by drying and frost, in a year of a mature infestation. A year of infestation is the mean of five mature years${infestedSince === undefined ? "; a schedule is followed from the year of establishment on" : ""}. Amounts with a minus are saved.`;

function physicalRows(shown: readonly ScheduleResult[], { format }: ReportContext): RowView[] {
  const line = (label: string, read: (each: ScheduleResult) => string) =>
    row(label, ...shown.map((each) => num(read(each))));
  return [
    line(`Highest level, ${format.unit("elevation")}`, ({ levels }) =>
      format.number(levels.band.highest, "elevation"),
    ),
    line(`Lowest level, ${format.unit("elevation")}`, ({ levels }) =>
      format.number(levels.band.lowest, "elevation"),
    ),
    line(`Ground laid bare, ${format.unit("landArea")}`, ({ levels }) =>
      format.number(levels.exposedArea, "landArea"),
    ),
    line(`Storage given up, ${format.unit("volume")}`, ({ id, storageGivenUp }) =>
      id === undefined ? "–" : format.number(storageGivenUp, "volume"),
    ),
    line(`Energy of a clean year, ${format.unit("energy")}`, ({ cleanEnergy }) =>
      format.number(cleanEnergy, "energy"),
    ),
    line(`Mussels killed in the band a year, ${format.unit("areaMass")}`, ({ killed }) =>
      format.number(killed(), "areaMass"),
    ),
    line(`Dead shell on ramps a year, ${format.unit("mass")}`, ({ litter }) => format.number(litter, "mass")),
  ];
}

function moneyRows(own: ScheduleResult, shown: readonly ScheduleResult[], context: ReportContext): RowView[] {
  const { exactMoney } = context.format;
  const byItem = shown.map((each) => operatingByItem(each, context));
  const items = [...new Set(byItem.flatMap((each) => [...each.keys()]))];
  const mature = (each: ScheduleResult) => matureMeanOf(each.infestation.byYear, context);
  const more = (each: ScheduleResult) => mature(each) - mature(own);
  const against = (read: (each: ScheduleResult) => number) =>
    shown.map((each) => num(each === own ? "–" : exactMoney(read(each))));
  return [
    groupRow("Following it, a year"),
    ...items.map((item) =>
      row(
        capitalised(item),
        ...byItem.map((each, index) =>
          num(shown[index] === own ? "–" : exactMoney((each.get(item) ?? 0) / centsPerUnit)),
        ),
      ),
    ),
    row("Sum", ...against(({ operating }) => totalOf(operating).toNumber())),
    groupRow("A year of a mature infestation"),
    row("Upkeep and losses", ...shown.map((each) => num(exactMoney(mature(each))))),
    row("More than as operated", ...against(more)),
    row(
      "More than as operated, with following it",
      ...against((each) => more(each) + totalOf(each.operating).toNumber()),
    ),
  ];
}

const centsPerUnit = 100;

/** Cents by what they are paid for, all structures together. */
function operatingByItem({ operating }: ScheduleResult, context: ReportContext): Map<string, number> {
  const sums = new Map<string, number>();
  for (const line of operating) {
    const item = itemOf(line, context);
    sums.set(item, (sums.get(item) ?? 0) + line.cents);
  }
  return sums;
}

/** A line without the name of its structure. */
function itemOf({ structure, what }: CostLine, { comparison }: ReportContext): string {
  const name = comparison.input.structures.find(({ id }) => id === structure)?.name;
  const start = `${name}: `;
  return what.startsWith(start) ? what.slice(start.length) : what;
}
