import { at, sumOf } from "../../lists.js";
import { once, withLater } from "../computed-once.js";
import { type CostLine, costLine } from "../money/line.js";
import type { Check, Component, ComponentResult, Priced } from "./component.js";
import type { Contexts, LakeContext } from "./context.js";
import { type HydraulicSummary, hydraulicSummary } from "./hydraulic-summary.js";
import { kindOf, type Structure } from "./kinds.js";
import {
  type GrowingYears,
  growingYears,
  isThickIn,
  type PartYears,
  untouchedCourse,
} from "./plans/untouched.js";
import type { LitterYear } from "./ramp.js";
import { keepInService } from "./upkeep.js";

export interface StructureResult {
  readonly structure: Structure;
  readonly components: readonly ComponentResult[];
  readonly litter: readonly LitterYear[];
  /** Energy of the whole plant in a clean year, kWh by month; empty for other kinds. */
  readonly cleanEnergy: readonly number[];
  /** Cost lines by year since establishment. */
  readonly years: readonly (readonly CostLine[])[];
  readonly checks: readonly Check[];
  /** Made when asked for. */
  readonly hydraulics: HydraulicSummary;
}

/**
 * What one structure costs in each year since establishment, with how it is kept in service.
 * @param contexts one for each possible operating year of the lake; what differs between them is averaged
 */
export function structureResult(structure: Structure, contexts: Contexts): StructureResult {
  const [context] = contexts;
  const kind = kindOf(structure);
  const parts = partsOf(structure, contexts);
  const growing = parts.map(growingYears);
  const components = keptComponents(structure, parts, growing);
  const litter = kind.litter?.(structure, contexts) ?? [];
  const cleanEnergy = kind.cleanEnergy?.(structure, contexts) ?? [];
  const result = {
    structure,
    components,
    litter,
    cleanEnergy,
    years: structureYears(structure, { growing, components, litter, cleanEnergy }, context),
    checks: components.map((component) => limitCheck(structure, component)),
  };
  return withLater(result, { hydraulics: () => hydraulicSummary(structure, components, context) });
}

/** A function of its own, so that what `structureResult` makes when asked for does not hold on to all that grew. */
const keptComponents = (
  { pinned }: Structure,
  parts: readonly PartYears[],
  growing: readonly GrowingYears[],
): ComponentResult[] => parts.map((part, index) => keepInService(part, pinned, at(growing, index)));

function partsOf(structure: Structure, [first, ...rest]: Contexts): PartYears[] {
  const others = rest.map((context) => ({ context, components: componentsOf(structure, context) }));
  return componentsOf(structure, first).map((component, index) => [
    { component, context: first },
    ...others.map(({ context, components }) => ({ component: at(components, index), context })),
  ]);
}

/** Where lines come from; those of a part go under its name. */
interface Origin {
  readonly part: string | undefined;
  readonly years: readonly (readonly Priced[])[];
}

interface Worked extends Pick<StructureResult, "components" | "litter" | "cleanEnergy"> {
  readonly growing: readonly GrowingYears[];
}

/** Cost lines of every year; a year that repeats all lists of an earlier one is the same list, and made once. */
function structureYears(
  structure: Structure,
  { growing, components, litter, cleanEnergy }: Worked,
  context: LakeContext,
): StructureResult["years"] {
  const origins: readonly Origin[] = [
    ...components.map(({ name, years }) => ({ part: name, years })),
    { part: undefined, years: kindOf(structure).ownYears?.(structure, litter, context) ?? [] },
    { part: undefined, years: fixtureYears(structure, { growing, litter }, context) },
  ];
  const made = cleanEnergy.length === 0 ? Infinity : sumOf(cleanEnergy);
  const years: (readonly CostLine[])[] = [];
  for (let year = 0; year < context.density.length / 12; year++) {
    const same = yearBefore(origins, year);
    years.push(
      same === undefined ? withinEnergyMade(ownLines(structure, origins, year), made) : at(years, same),
    );
  }
  return years;
}

const none: readonly Priced[] = [];

/** The last year before one in which each origin has the same list. */
function yearBefore(origins: readonly Origin[], year: number): number | undefined {
  for (let before = year - 1; before >= 0; before--) if (isSame(origins, before, year)) return before;
  return undefined;
}

function isSame(origins: readonly Origin[], one: number, other: number): boolean {
  for (const { years } of origins) if (years[one] !== years[other]) return false;
  return true;
}

function ownLines(structure: Structure, origins: readonly Origin[], year: number): CostLine[] {
  const lines: CostLine[] = [];
  for (const { part, years } of origins) {
    for (const line of years[year] ?? none) lines.push(ownLine(structure, part, line));
  }
  return lines;
}

function ownLine({ id, bearer }: Structure, part: string | undefined, line: Priced): CostLine {
  const { type, quantity, quantityKind, unitRate, assumptionIds } = line;
  const what = part === undefined ? line.what : `${part}: ${line.what}`;
  return costLine({ structure: id, what, type, bearer, quantity, quantityKind, unitRate, assumptionIds });
}

export const componentsOf = (structure: Structure, context: LakeContext): Component[] =>
  kindOf(structure).components(structure, context).map(ofOneForm);

/** All parts have the same fields in the same order, whatever their kind: the engine then reads them in its fast way. */
function ofOneForm(part: Component): Component {
  return {
    name: part.name,
    kind: part.kind,
    surface: part.surface,
    wettedArea: part.wettedArea,
    designFlow: part.designFlow,
    count: part.count,
    cleaning: part.cleaning,
    oxidant: part.oxidant,
    outage: part.outage,
    outageDaysId: part.outageDaysId,
    isFed: part.isFed === true,
    losses: part.losses,
    limit: part.limit,
  };
}

/**
 * A plant loses no more energy in a year than it makes: its parts are judged one by one, and where their losses
 * add up to more, each is cut in proportion.
 */
function withinEnergyMade(lines: readonly CostLine[], made: number): readonly CostLine[] {
  let lost = 0;
  for (const line of lines) if (line.quantityKind === "energy") lost += line.quantity;
  if (lost <= made) return lines;
  return lines.map((line) =>
    line.quantityKind === "energy" ? costLine({ ...line, quantity: (line.quantity * made) / lost }) : line,
  );
}

/**
 * Work on fixtures, by year: where a surface that nobody touches has a layer worth cleaning, or litter is there, since no
 * plan keeps them.
 */
function fixtureYears(
  structure: Structure,
  { growing, litter }: Pick<Worked, "growing" | "litter">,
  context: LakeContext,
): Origin["years"] {
  if (structure.fixtures.length === 0) return [];
  const worthCleaning = context.assumed("cleaning.smallest-layer");
  const courses = growing.flat().map((part) => once(() => untouchedCourse(1, part)));
  const lines = once(() => fixtureLines(structure, context));
  return Array.from({ length: context.density.length / 12 }, (_, year) => {
    const isFouled =
      courses.some((course) => isThickIn(course(), year, worthCleaning)) || (litter[year]?.mass ?? 0) > 0;
    return isFouled ? lines() : none;
  });
}

/** Hours on gates, guides, gauges and drains in a year in which they foul. */
function fixtureLines(structure: Structure, { assumed }: LakeContext): Priced[] {
  return structure.fixtures.map((fixture) => ({
    what: `work on ${fixture.name}`,
    type: "work",
    quantity: fixture.count * fixture.hoursEach,
    quantityKind: "hours",
    unitRate: assumed("labour.maintenance-rate"),
    assumptionIds: ["labour.maintenance-rate"],
  }));
}

function limitCheck(structure: Structure, component: ComponentResult): Check {
  const { brokenLimit, plan } = component.chosen;
  return {
    what: `${structure.name}, ${component.name}: its plan keeps its limits`,
    found: brokenLimit
      ? `${brokenLimit} at times, when ${plan.label}; forced cleanings are costed`
      : plan.label,
    allowed: "all limits kept",
    passed: brokenLimit === undefined,
  };
}
