import { at } from "../../lists.js";
import { once, withLater } from "../computed-once.js";
import type { CostLine } from "../money/line.js";
import type { Check, Component, ComponentResult } from "./component.js";
import type { Contexts, LakeContext } from "./context.js";
import { type HydraulicSummary, hydraulicSummary } from "./hydraulic-summary.js";
import { kindOf, type Structure } from "./kinds.js";
import { type GrowingYears, growingYears, type PartYears } from "./plans/untouched.js";
import type { LitterYear } from "./ramp.js";
import { costLinesByYear, type ToldYears, toldYears } from "./structure-years.js";
import { keepInService } from "./upkeep.js";

export interface StructureResult {
  readonly structure: Structure;
  readonly components: readonly ComponentResult[];
  readonly litter: readonly LitterYear[];
  /** Energy of the whole plant in a clean year, kWh by month; empty for other kinds. */
  readonly cleanEnergy: readonly number[];
  /** What it costs by year since establishment, as it was told. */
  readonly told: ToldYears;
  /** The same as cost lines; made when asked for. */
  readonly years: readonly (readonly CostLine[])[];
  /** Made when asked for. */
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
  const growing = partsOf(structure, contexts).map(growingYears);
  const components = keptComponents(structure, contexts, growing);
  const litter = kind.litter?.(structure, contexts) ?? [];
  const cleanEnergy = kind.cleanEnergy?.(structure, contexts) ?? [];
  const told = toldYears(structure, { growing, components, litter, cleanEnergy }, context);
  return withLater(
    { structure, components, litter, cleanEnergy, told },
    {
      years: () => costLinesByYear(structure, told),
      checks: () => components.map((component) => limitCheck(structure, component)),
      hydraulics: () => hydraulicSummary(structure, components, context),
    },
  );
}

/** A function of its own, so that what `structureResult` makes when asked for does not hold on to all that grew. */
function keptComponents(
  structure: Structure,
  contexts: Contexts,
  growing: readonly GrowingYears[],
): ComponentResult[] {
  const again = once(() => partsOf(structure, contexts));
  return growing.map((part, index) => keepInService(part, structure.pinned, remakerOf(again, index)));
}

/** A function of its own for the same reason: parts hold on to the layers and the ledger that they saw last. */
const remakerOf = (again: () => readonly PartYears[], index: number) => () => at(again(), index);

function partsOf(structure: Structure, [first, ...rest]: Contexts): PartYears[] {
  const others = rest.map((context) => ({ context, components: componentsOf(structure, context) }));
  return componentsOf(structure, first).map((component, index) => [
    { component, context: first },
    ...others.map(({ context, components }) => ({ component: at(components, index), context })),
  ]);
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
    areaIds: part.areaIds,
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
