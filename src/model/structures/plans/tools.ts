import { noElement } from "../../../lists.js";
import { remembered } from "../../computed-once.js";
import { type GrownMonths, layerAt } from "../../mussels/grown-months.js";
import type { Layer } from "../../mussels/layer.js";
import type { PlanEntry } from "../catalogue.js";
import type { LimitLoad, Plan, Tell } from "../component.js";
import { forcedCleaning, NearestLimit, noLoad } from "../limits.js";
import { removalLines, shellLines, workLines } from "../plan-work.js";
import { type Course, firstCleaned, grownIn, isCleaned, layerIn, runIn, startOf } from "./course-months.js";
import { Ledger, tellAll } from "./ledger.js";
import { type PartYear, type SurfacePart, type UntouchedCourse, untouchedCourse } from "./untouched.js";
import { addTo, type Cost, costOfLines, noCost } from "./weights.js";

/** What all plans of one part share in one operating year: each thing is reckoned once. */
export interface PlanTools extends SurfacePart {
  /** The surface if nobody touches it, under a share of the settlers. */
  readonly untouched: (factor: number) => UntouchedCourse;
  /** Tells what stands in a month of a course, and what died in it. */
  readonly tellMonth: (tell: Tell, plan: Plan, course: Course, month: number) => void;
  /** What stands in a year of a course, and what is carted away. */
  readonly inYear: (year: number, plan: Plan, course: Course) => YearCost;
  /** What a date of a plan costs in a month of the year, apart from what is carted away. */
  readonly workOf: (entry: PlanEntry, month: number) => Cost;
}

export interface YearCost {
  /** Of the year that was asked for last: later ones stand in the same list. */
  readonly cost: Cost;
  /** The limit that the layer comes nearest to. */
  readonly nearest: LimitLoad;
}

/** What the months of courses cost: each is a month of the ledger, reckoned once. */
interface Months {
  readonly ledger: Ledger;
  readonly inMonth: (plan: Plan, course: Course, month: number) => number;
}

export function planTools({ component, context, surface }: SurfacePart): PlanTools {
  const { planWeights } = context;
  const part: SurfacePart = { component, context, surface };
  const months = monthsOf(part);
  const courses = remembered((factor: number) => untouchedCourse(factor, part));
  const yearCost = yearCosts(part, months);
  const untouchedYears = remembered((_: Course): YearCost[] => []);
  const works = remembered((_: PlanEntry): Cost[] => []);
  return {
    component,
    context,
    surface,
    untouched: courses,
    tellMonth: (tell, plan, course, month) =>
      months.ledger.tellAgain(tell, months.inMonth(plan, course, month)),
    inYear: (year, plan, course) => {
      if (component.isFed || firstCleaned(course) < Infinity) return yearCost(year, plan, course);
      const years = untouchedYears(course);
      const known = years[year];
      if (known !== undefined) return known;
      const { cost, nearest } = yearCost(year, plan, course);
      const kept = { cost: cost.slice(), nearest };
      years[year] = kept;
      return kept;
    },
    workOf: (entry, month) => {
      const known = works(entry);
      known[month] ??= costOfLines(workLines(entry, component, context, month), planWeights);
      return known[month];
    },
  };
}

/** A run of a course from bare on, with the months of the ledger for each of its own. */
interface KnownRun {
  readonly course: Course;
  readonly from: number;
  readonly to: number;
  readonly grown: GrownMonths;
  readonly fed: number[];
  /** Those in which nothing comes down from upstream. */
  readonly unfed: number[];
}

/**
 * Plans share many months: those of a run from bare on belong to one month of the year each. What comes down from upstream
 * in them is the same for all plans, or nothing where a filter holds it.
 */
function monthsOf(part: SurfacePart): Months {
  const ledger = new Ledger(part.context.planWeights, part.context.growth.room);
  const reckon = monthCosts(part, ledger);
  const fedOf = remembered((_: GrownMonths): number[] => []);
  const unfedOf = part.component.isFed ? remembered((_: GrownMonths): number[] => []) : fedOf;
  let known: KnownRun | undefined;
  const inMonth: Months["inMonth"] = (plan, course, month) => {
    if (known === undefined || known.course !== course || month < known.from || month >= known.to)
      known = knownRun(course, month, fedOf, unfedOf);
    const place = month - known.from;
    const upstream = upstreamShare(plan, month, part);
    const months = upstream === 0 ? known.unfed : known.fed;
    months[place] ??= reckon(layerAt(known.grown, place), month % 12, upstream);
    return months[place];
  };
  return { ledger, inMonth };
}

type MonthsOf = (grown: GrownMonths) => number[];

function knownRun(course: Course, month: number, fedOf: MonthsOf, unfedOf: MonthsOf): KnownRun {
  const run = runIn(course, month);
  const grown = grownIn(course, run);
  const [from, to] = [startOf(course, run), startOf(course, run + 1)];
  return { course, from, to, grown, fed: fedOf(grown), unfed: unfedOf(grown) };
}

/**
 * What a layer costs in a month while it stands, and the shells of what died in it.
 * @returns a function that tells it to the ledger, and returns the ledger's month
 */
function monthCosts({ component, context }: SurfacePart, ledger: Ledger) {
  const { losses, limit, isFed } = component;
  const { tell } = ledger;
  const tellForced = forcedCleaning(component, context);
  const nearest = new NearestLimit();
  return (layer: Layer, month: number, upstream: number): number => {
    const isFouled = layer.mass > 0;
    if (layer.killed > 0) tellAll(tell, shellLines(layer, component, context));
    if (isFouled || isFed) losses(tell, layer, month, upstream);
    nearest.clear();
    if (isFouled) limit(nearest.meet, layer, month);
    tellForced(tell, nearest, month);
    return ledger.endMonth(nearest);
  };
}

/** Pieces from upstream come as the lake's density has it; none passes a filter while mussels are regularly found. */
export function upstreamShare({ entry }: Plan, month: number, { component, context }: PartYear): number {
  if (!component.isFed) return 0;
  const { density, matureDensity, found } = context;
  if (entry.measure === "filter" && found.isFound(month)) return 0;
  return matureDensity > 0 ? (density[month] ?? noElement(density, month)) / matureDensity : 0;
}

/** @returns what stands in a year of a course costs, and what is carted away, in one list for all years */
function yearCosts({ component, context }: SurfacePart, { ledger, inMonth }: Months): PlanTools["inYear"] {
  const { planWeights } = context;
  const cost = noCost(planWeights);
  return (year, plan, course) => {
    for (let part = 0; part < cost.length; part++) cost[part] = 0;
    let load = 0;
    let nearest = -1;
    for (let month = year * 12; month < year * 12 + 12; month++) {
      const found = inMonth(plan, course, month);
      ledger.addTo(cost, found);
      if (ledger.loadIn(found) > load) {
        load = ledger.loadIn(found);
        nearest = found;
      }
      if (isCleaned(course, month))
        addTo(cost, removalLines(plan, layerIn(course, month), component, context), planWeights);
    }
    return { cost, nearest: nearest < 0 ? noLoad : ledger.nearestIn(nearest) };
  };
}
