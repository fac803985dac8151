import { at } from "../../lists.js";
import { monthNames } from "../format/month-names.js";
import type { Cell } from "./cells.js";
import type { SearchedSet } from "./plan.js";
import type { Placed, Searching } from "./points.js";
import type { NextStep } from "./result.js";

interface Step {
  readonly what: string;
  readonly isMore: boolean;
  readonly placed: Placed;
}

/** One step more and one less from the option that the search starts from, each by itself. */
export function nextSteps(search: Searching): NextStep[] {
  const { plan, of, costPerYear } = search;
  const set = at(plan.sets, 0);
  const start: Placed = { set: 0, taken: set.own };
  const [before, costBefore] = [of(start), costPerYear(start)];
  const steps = [
    ...set.cells.flatMap((cell, index) =>
      "site" in cell ? hourSteps(set, cell, index) : monthSteps(set, cell.month, index),
    ),
    ...siteSteps(set),
    ...measureSteps(search),
  ];
  return steps.map(({ what, isMore, placed }) => {
    const after = of(placed);
    return {
      ...{ what, isMore },
      costPerYear: costPerYear(placed) - costBefore,
      chance: beyondRounding(after.chance - before.chance, 1e-12),
      avoidedLoss: beyondRounding(before.loss - after.loss, 1e-4),
      netBenefit: before.cost - after.cost,
    };
  });
}

/** Programs that meet the same boats in another order of sums do not differ. */
const beyondRounding = (difference: number, least: number) => (Math.abs(difference) < least ? 0 : difference);

function takenWith(set: SearchedSet, changes: ReadonlyMap<number, number>): Placed["taken"] {
  const levels = set.own.levels.map((level, index) => changes.get(index) ?? level);
  const taken = set.cells.map((cell, index) => at(cell.levels, at(levels, index)));
  return {
    levels,
    hours: taken.reduce((sum, { hours }) => sum + hours, 0),
    met: taken.reduce((sum, { met }) => sum + met, 0),
  };
}

const lengthOf = ({ open }: Cell["levels"][number]) => (open ? open.to - open.from : 0);

/** An hour a day more, and one less, at one site on days of one type. */
function hourSteps(set: SearchedSet, cell: Cell, index: number): Step[] {
  const own = lengthOf(at(cell.levels, cell.own));
  const where = `${cell.siteName}, ${cell.name}`;
  return [1, -1].flatMap((more): Step[] => {
    const level = cell.levels.findIndex((each, place) => place !== cell.own && lengthOf(each) === own + more);
    if (level < 0) return [];
    const placed = { set: 0, taken: takenWith(set, new Map([[index, level]])) };
    const what = more > 0 ? "one hour a day more" : "one hour a day less";
    return [{ what: `${where}: ${what}`, isMore: more > 0, placed }];
  });
}

function monthSteps(set: SearchedSet, month: number, index: number): Step[] {
  const isOpen = at(set.own.levels, index) === 1;
  const name = at(monthLabels, month);
  if (isOpen && at(at(set.cells, index).levels, 0).hours > 0) return [];
  const placed = { set: 0, taken: takenWith(set, new Map([[index, isOpen ? 0 : 1]])) };
  return [{ what: isOpen ? `closed in ${name}` : `open in ${name} as well`, isMore: !isOpen, placed }];
}

const monthLabels = monthNames.map((name) => name.charAt(0).toUpperCase() + name.slice(1));

/** Each site that is open closed altogether. */
function siteSteps(set: SearchedSet): Step[] {
  const sites = new Map<string, string>();
  for (const cell of set.cells) if ("site" in cell) sites.set(cell.site, cell.siteName);
  return [...sites].flatMap(([site, name]): Step[] => {
    const changes = new Map<number, number>();
    set.cells.forEach((cell, index) => {
      const none = "site" in cell && cell.site === site ? cell.levels.findIndex(({ open }) => !open) : -1;
      if (none >= 0) changes.set(index, none);
    });
    const taken = takenWith(set, changes);
    if (changes.size === 0 || taken.hours === set.own.hours) return [];
    return [{ what: `no station at ${name}`, isMore: false, placed: { set: 0, taken } }];
  });
}

/** Each measure by itself, in the option's own hours. */
function measureSteps({ plan }: Searching): Step[] {
  return plan.sets.flatMap(({ measures, own }, set): Step[] => {
    const [measure] = measures;
    if (!measure || measures.length > 1) return [];
    const isLess = measure.withoutSeals === true || measure.withoutWash === true;
    return [{ what: measure.name, isMore: !isLess, placed: { set, taken: own } }];
  });
}
