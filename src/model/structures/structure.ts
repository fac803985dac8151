import { months } from "../lake/calendar.js";
import { at } from "../lists.js";
import { type CostLine, costLine } from "../money/line.js";
import type { Check, Component, ComponentResult, Priced } from "./component.js";
import type { Contexts, LakeContext } from "./context.js";
import { dockComponents } from "./dock.js";
import { type HydraulicSummary, hydraulicSummary } from "./hydraulic-summary.js";
import { hydropowerComponents, operatingYear } from "./hydropower.js";
import type { Structure } from "./inputs.js";
import { intakeComponents } from "./intake.js";
import { type LitterYear, litterByYear, rampYears } from "./ramp.js";
import { serviceLineComponents } from "./service-line.js";
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
  const components = keptComponents(structure, contexts);
  const litter = structure.kind === "ramp" ? litterByYear(structure, contexts) : [];
  let hydraulics: HydraulicSummary | undefined;
  const cleanEnergy = structure.kind === "hydropower" ? plantEnergy(structure, contexts) : [];
  return {
    structure,
    components,
    litter,
    cleanEnergy,
    years: structureYears(structure, { components, litter, cleanEnergy }, context),
    checks: components.map((component) => limitCheck(structure, component)),
    get hydraulics() {
      hydraulics ??= hydraulicSummary(structure, components, context);
      return hydraulics;
    },
  };
}

function keptComponents(structure: Structure, [first, ...rest]: Contexts): ComponentResult[] {
  const others = rest.map((context) => ({ context, components: componentsOf(structure, context) }));
  return componentsOf(structure, first).map((component, index) =>
    keepInService(
      [
        { component, context: first },
        ...others.map(({ context, components }) => ({ context, component: at(components, index) })),
      ],
      structure.pinned,
    ),
  );
}

/** Where lines come from; those of a part go under its name. */
interface Origin {
  readonly part?: string;
  readonly years: readonly (readonly Priced[])[];
}

/** Cost lines of every year; a year that repeats all lists of an earlier one is the same list, and made once. */
function structureYears(
  structure: Structure,
  { components, litter, cleanEnergy }: Pick<StructureResult, "components" | "litter" | "cleanEnergy">,
  context: LakeContext,
): StructureResult["years"] {
  const fouled = fouledYears(components, litter, context);
  const fixtures = fouled.includes(true) ? fixtureLines(structure, context) : [];
  const origins: readonly Origin[] = [
    ...components.map(({ name, years }) => ({ part: name, years })),
    { years: structure.kind === "ramp" ? rampYears(structure, litter, context) : [] },
    { years: structure.kind === "lake-wide" ? itemYears(structure.items, fouled.length) : [] },
    { years: fouled.map((isFouled) => (isFouled ? fixtures : none)) },
  ];
  const known: { year: number; lines: readonly CostLine[] }[] = [];
  return fouled.map((_, year) => {
    const same = known.findLast((each) => isSame(origins, each.year, year));
    if (same) return same.lines;
    const lines = withinEnergyMade(ownLines(structure, origins, year), cleanEnergy);
    known.push({ year, lines });
    return lines;
  });
}

const none: readonly Priced[] = [];

/** True where each origin has the same list in both years. */
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

/** The parts of a structure that foul; none where it is swept or only has duties. */
export function componentsOf(structure: Structure, context: LakeContext): Component[] {
  switch (structure.kind) {
    case "intake":
      return intakeComponents(structure, context);
    case "hydropower":
      return hydropowerComponents(structure, context);
    case "service-line":
      return serviceLineComponents(structure, context);
    case "dock":
      return dockComponents(structure, context);
    case "ramp":
    case "lake-wide":
      return [];
  }
}

/** Energy of a clean year by month, the mean over the possible operating years. */
function plantEnergy(plant: Extract<Structure, { kind: "hydropower" }>, contexts: Contexts): number[] {
  const years = contexts.map((context) => operatingYear(plant, context).energy);
  return months.map(
    (month) => (years.reduce((sum, energy) => sum + at(energy, month), 0) / years.length) * plant.units,
  );
}

/**
 * A plant loses no more energy in a year than it makes: its parts are judged one by one, and where their losses
 * add up to more, each is cut in proportion.
 */
function withinEnergyMade(lines: readonly CostLine[], cleanEnergy: readonly number[]): readonly CostLine[] {
  if (cleanEnergy.length === 0) return lines;
  const made = cleanEnergy.reduce((sum, month) => sum + month, 0);
  const lost = lines.reduce((sum, line) => sum + (line.quantityKind === "energy" ? line.quantity : 0), 0);
  if (lost <= made) return lines;
  return lines.map((line) =>
    line.quantityKind === "energy" ? costLine({ ...line, quantity: (line.quantity * made) / lost }) : line,
  );
}

type Items = Extract<Structure, { kind: "lake-wide" }>["items"];

/** A year in which no item begins has the list of the year before. */
function itemYears(items: Items, horizon: number): readonly (readonly Priced[])[] {
  const years: (readonly Priced[])[] = [];
  for (let year = 0; year < horizon; year++) {
    const before = items.some(({ fromYear }) => fromYear === year + 1) ? undefined : years[year - 1];
    years.push(before ?? itemLines(items, year));
  }
  return years;
}

function itemLines(items: Items, year: number): Priced[] {
  return items
    .filter((item) => year + 1 >= item.fromYear)
    .map((item) => ({
      what: item.name,
      type: item.apart ? "apart" : "work",
      quantity: 1,
      quantityKind: "year",
      unitRate: item.cost,
      assumptionIds: [],
    }));
}

/** Years in which a layer worth cleaning, or litter, is there. */
function fouledYears(
  components: readonly ComponentResult[],
  litter: readonly LitterYear[],
  { assumed, density }: LakeContext,
): boolean[] {
  const worthCleaning = assumed("cleaning.smallest-layer");
  return Array.from(
    { length: density.length / 12 },
    (_, year) =>
      components.some(({ thicknessByYear }) => at(thicknessByYear, year) >= worthCleaning) ||
      (litter[year]?.mass ?? 0) > 0,
  );
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
    what: `${structure.name}, ${component.name}: a plan keeps its limits`,
    found: brokenLimit ? `${brokenLimit}, even when ${plan.label}` : plan.label,
    allowed: "all limits kept in a mature infestation",
    passed: brokenLimit === undefined,
  };
}
