import type { Money } from "../../model/money/decimal.js";
import { totalOf } from "../../model/money/line.js";
import type { ProgramLine } from "../../model/program/cost.js";
import { byGroup, type Grouped, type LineGroup } from "../../model/program/groups.js";

/** Lines of a program that pay for one thing, with their sum. */
export interface GroupSum extends Grouped<ProgramLine> {
  readonly total: Money;
}

/** A year of a program while the lake is clean, in groups and in the few sums that a board asks for. */
export interface ProgramSums {
  readonly costs: readonly GroupSum[];
  /** Of all that it costs, before fees and other revenue. */
  readonly cost: Money;
  readonly revenue: readonly GroupSum[];
  readonly total: Money;
  readonly ofBoard: {
    readonly staff: Money;
    readonly things: Money;
    readonly others: Money;
    readonly revenue: Money;
  };
}

const staffGroups: ReadonlySet<LineGroup> = new Set(["wages", "supervision", "training"]);
const thingGroups: ReadonlySet<LineGroup> = new Set([
  "hot-wash",
  "vehicles",
  "site-works",
  "equipment",
  "seals",
]);

export function programSums(lines: readonly ProgramLine[]): ProgramSums {
  const costs = lines.filter(({ type }) => type !== "revenue");
  const revenue = lines.filter(({ type }) => type === "revenue");
  const isOther = ({ group }: ProgramLine) => !staffGroups.has(group) && !thingGroups.has(group);
  return {
    costs: groupSums(costs),
    cost: totalOf(costs),
    revenue: groupSums(revenue),
    total: totalOf(lines),
    ofBoard: {
      staff: totalOf(costs.filter(({ group }) => staffGroups.has(group))),
      things: totalOf(costs.filter(({ group }) => thingGroups.has(group))),
      others: totalOf(costs.filter(isOther)),
      revenue: totalOf(revenue),
    },
  };
}

const groupSums = (lines: readonly ProgramLine[]): GroupSum[] =>
  byGroup(lines).map((each) => ({ ...each, total: totalOf(each.lines) }));
