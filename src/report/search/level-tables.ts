import { counted } from "../../counted.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { LevelSearch, SearchedSchedule } from "../../study/levels/level-result.js";
import { levelCautions } from "../board/schedules/schedule-cautions.js";
import { capitalised, formatter, listedWithin } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { type LevelContext, leftOutText, levelLead, ruleText, scheduleText } from "./level-words.js";
import { signed } from "./program-cells.js";

export interface LevelTables {
  readonly lead: readonly string[];
  readonly schedules: TableView;
  readonly cautions: readonly string[];
}

export const levelContext = (levels: LevelSearch, { money, study, lake }: StudyDocument): LevelContext => ({
  levels,
  format: formatter(money.currency, study.units),
  horizon: money.horizon,
  infestedSince: lake.infestedSince,
});

/** What the search found of levels, in a table, the sentences above it and the cautions. */
export function levelTables(levels: LevelSearch, document: StudyDocument): LevelTables {
  const context = levelContext(levels, document);
  return {
    lead: levelLead(context),
    schedules: scheduleTable(context),
    cautions: levelCautions(exposing(context)),
  };
}

/** Schedules that expose the same inlets together. */
function exposing(context: LevelContext): Array<{ name: string; inlets: readonly string[] }> {
  const byInlets = new Map<string, SearchedSchedule[]>();
  for (const each of shownOf(context.levels)) {
    const key = each.exposedInlets.join("; ");
    byInlets.set(key, [...(byInlets.get(key) ?? []), each]);
  }
  return [...byInlets.values()]
    .map((same) => ({
      name: listedWithin(
        same.map((each) => depthWords(each, context)),
        mostNames,
      ),
      inlets: same[0]?.exposedInlets ?? [],
    }))
    .filter(({ inlets }) => inlets.length > 0);
}

const mostNames = 6;

const depthWords = ({ name, drawdown }: SearchedSchedule, { format }: LevelContext) =>
  drawdown ? format.quantity(drawdown.lowest, "elevation") : `“${name ?? ""}”`;

const shownOf = ({ typed, byDepth }: LevelSearch) => [...typed, ...byDepth];

function scheduleTable(context: LevelContext): TableView {
  const { levels, format, horizon } = context;
  const shown = shownOf(levels);
  const items = [...new Set(shown.flatMap(({ followingByItem }) => followingByItem.map(({ what }) => what)))];
  return {
    id: "table-search-levels",
    caption: "Schedules of levels beside the levels as operated: a year once the lake is infested",
    head: head(
      "Schedule",
      num(`Lowest level, ${format.unit("elevation")}`),
      num(`Mussels killed, ${format.unit("areaMass")}`),
      num("Upkeep and losses saved"),
      ...items.map((item) => num(capitalised(item))),
      num("Saved a year"),
      num(`Saved over ${horizon} years`),
    ),
    rows: [levels.present, ...shown].map((each) => scheduleRow(each, items, context)),
    note: [
      tableNote(items.length > 0, context),
      ruleText(context),
      leftOutText(context),
      `${counted(levels.tried, "drawdown")} of the list ${levels.tried === 1 ? "was" : "were"} worked out, one by one; of each lowest level the one that costs least is shown.`,
    ]
      .filter(Boolean)
      .join(" "),
  };
}

const tableNote = (hasItems: boolean, { infestedSince }: LevelContext) =>
  `Mussels killed: on hard surface in the exposed band.${hasItems ? " The cost of following a schedule has a column for each item; a negative amount is a gain." : ""} Saved over the years: present value at central values${infestedSince === undefined ? ", allowing for the chance of infestation" : ""}.`;

function scheduleRow(each: SearchedSchedule, items: readonly string[], context: LevelContext) {
  const { format, levels } = context;
  const isPresent = each === levels.present;
  const amount = (value: number) => num(isPresent ? "–" : signed(value, format.money));
  const costOf = (item: string) => each.followingByItem.find(({ what }) => what === item)?.amount ?? 0;
  const name = isPresent ? "As operated" : scheduleText(each, context);
  return row(
    each.id !== undefined && each.id === levels.best?.id ? `${name} (least)` : name,
    num(format.number(each.lowest, "elevation")),
    num(format.number(each.killed, "areaMass")),
    amount(each.upkeepSaved),
    ...items.map((item) => amount(costOf(item))),
    amount(each.upkeepSaved - each.following),
    amount(each.saved),
  );
}
