import type { ScheduleResult } from "../../../model/schedules.js";
import type { TracedSchedule } from "../../../study/levels/traced-schedule.js";
import type { ReportContext } from "../../document/context.js";
import { capitalised } from "../../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../../words/view-types.js";

/** Other schedules in one table, beside the levels as operated. */
const mostBeside = 3;

/** A column for each schedule; the levels as operated stand first in every table. */
export function scheduleTables(context: ReportContext): TableView[] {
  const [own, ...others] = context.traced.schedules;
  const count = Math.ceil(others.length / mostBeside);
  return Array.from({ length: count }, (_, index) => {
    const shown = [own, ...others.slice(index * mostBeside, (index + 1) * mostBeside)];
    return {
      id: `table-schedules-${index + 1}`,
      caption: `Schedules of levels side by side${count > 1 ? `, ${index + 1} of ${count}` : ""}, prices of ${context.priceYear}`,
      head: head("", ...shown.map(({ schedule }) => num(capitalised(schedule.name)))),
      rows: [...physicalRows(shown, context), ...moneyRows(shown, context)],
      note: note(context),
    };
  });
}

const note = ({ infestedSince }: ReportContext) =>
  `Following a schedule is costed against the levels as operated, mussels apart; flows through plants and intakes stay as they are, and water released earlier is not credited. Storage given up is that of the worst day. Mussels killed: on hard surface in the band that the schedule exposes, by drying and frost, in a year of a mature infestation. A year of infestation is the mean of five mature years${infestedSince === undefined ? "; a schedule is followed from the year of establishment on" : ""}. Negative amounts are saved.`;

function physicalRows(shown: readonly TracedSchedule[], { format }: ReportContext): RowView[] {
  const line = (label: string, read: (each: ScheduleResult) => string) =>
    row(label, ...shown.map(({ schedule }) => num(read(schedule))));
  return [
    line(`Highest level, ${format.unit("elevation")}`, ({ levels }) =>
      format.number(levels.band.highest, "elevation"),
    ),
    line(`Lowest level, ${format.unit("elevation")}`, ({ levels }) =>
      format.number(levels.band.lowest, "elevation"),
    ),
    line(`Ground exposed, ${format.unit("landArea")}`, ({ levels }) =>
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

function moneyRows(shown: readonly TracedSchedule[], { format, traced }: ReportContext): RowView[] {
  const { exactMoney } = format;
  const [own] = traced.schedules;
  const items = [...new Set(shown.flatMap(({ operatingByItem }) => [...operatingByItem.keys()]))];
  const against = (read: (each: TracedSchedule) => number) =>
    shown.map((each) => num(each === own ? "–" : exactMoney(read(each))));
  const more = ({ matureMean }: TracedSchedule) => matureMean - own.matureMean;
  return [
    groupRow("Following it, a year"),
    ...items.map((item) =>
      row(capitalised(item), ...against(({ operatingByItem }) => operatingByItem.get(item)?.toNumber() ?? 0)),
    ),
    row("Sum", ...against(({ operatingPerYear }) => operatingPerYear.toNumber())),
    groupRow("A year of a mature infestation"),
    row("Upkeep and losses", ...shown.map(({ matureMean }) => num(exactMoney(matureMean)))),
    row("More than as operated", ...against(more)),
    row(
      "More than as operated, with following it",
      ...against((each) => more(each) + each.operatingPerYear.toNumber()),
    ),
  ];
}
