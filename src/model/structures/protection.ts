import { months } from "../lake/calendar.js";
import type { InstalledPlan, PlanBy, PlanEntry } from "./catalogue.js";
import { outageLine } from "./cleaning.js";
import type { Component, Outage, Priced, Protection } from "./component.js";
import type { LakeContext } from "./context.js";
import type { InstallationPrices } from "./installation-prices.js";
import { chemicalDose, endOfSeasonDose, seasonDose } from "./oxidant.js";

/**
 * The protection of a plan; none where the plan only cleans. An installation costs K = k s0 (s/s0)^m by its size, more
 * slowly than in proportion (six-tenths rule, `six-tenths`), and a year of it A = K (i/(1 − (1+i)^−n) + u): capital
 * recovery and upkeep.
 */
export function protectionOf(
  entry: PlanEntry,
  component: Component,
  context: LakeContext,
): Protection | undefined {
  switch (entry.measure) {
    case "trigger": {
      const inspected = [inspection(entry, component, context)];
      return protection(1, () => inspected);
    }
    case "coating":
    case "filter":
      return protection(
        context.assumed(entry.numbers.settlementFactor),
        installation(entry, component, context),
      );
    case "heat":
    case "second-line":
      return protection(1, installation(entry, component, context));
    case "oxidant-season":
      return dosed(context.assumed("oxidant.settlement-factor"), seasonDose, { entry, component, context });
    case "oxidant-end":
      return dosed(1, endOfSeasonDose, { entry, component, context });
    case "chemical-season":
      return dosed(
        context.assumed(entry.numbers.settlementFactor),
        (part, lake) => chemicalDose(entry, part, lake),
        { entry, component, context },
      );
    default:
      return undefined;
  }
}

function dosed(
  settlementFactor: number,
  doseOf: typeof seasonDose,
  { entry, component, context }: { entry: InstalledPlan; component: Component; context: LakeContext },
): Protection {
  const installed = installation(entry, component, context);
  const dose = doseOf(component, context);
  return protection(settlementFactor, (month) => [...installed(month), ...dose(month)]);
}

function protection(settlementFactor: number, inMonth: (month: number) => readonly Priced[]): Protection {
  return { settlementFactor, monthly: months.map(inMonth) };
}

/** A protection is in place while mussels are regularly found, D ≥ Df, and from its first use on. */
export function isInPlace({ found }: LakeContext, firstUse: number): (month: number) => boolean {
  return (month) => month >= firstUse || found.isFound(month);
}

function inspection({ numbers }: PlanBy<"trigger">, component: Component, context: LakeContext): Priced {
  return {
    what: "inspections",
    type: "protection",
    quantity: component.count,
    quantityKind: "visits",
    unitRate: context.assumed(numbers.inspection),
    assumptionIds: [numbers.inspection, numbers.limitShare],
  };
}

/** The size by which a measure is priced: m² of a coating or of a second line's wall, m³/s of a treatment. */
export const sizeOf = (entry: InstalledPlan, component: Component): number =>
  isByArea(entry) ? component.wettedArea : component.designFlow;

const isByArea = ({ measure }: InstalledPlan) => measure === "coating" || measure === "second-line";

/**
 * The lines of an installation in each month: its capital at capital recovery over its life, at the study's real rate,
 * and its upkeep as a share of the capital. Capital grows with size to the power of an exponent below 1.
 * An installation takes the part out of service once in its life, in the month in which that costs least.
 */
function installation(entry: InstalledPlan, component: Component, context: LakeContext) {
  const prices = context.installation(entry);
  const { capitalAtReference, referenceSize, sizeExponent, yearlyShare, assumptionIds } = prices;
  const capital = capitalAtReference * (sizeOf(entry, component) / referenceSize) ** sizeExponent;
  const usual: readonly Priced[] = [
    {
      what: entry.name,
      type: "protection",
      quantity: 1 / 12,
      quantityKind: "year",
      unitRate: capital * yearlyShare,
      assumptionIds: isByArea(entry) ? [...assumptionIds, ...(component.areaIds ?? [])] : assumptionIds,
    },
  ];
  const outage = installationOutage(prices, component, context);
  return (month: number) => (outage?.month === month ? [...usual, outage.line] : usual);
}

function installationOutage(
  { outage: ids }: InstallationPrices,
  { outage }: Component,
  { assumed }: LakeContext,
) {
  if (outage === undefined) return undefined;
  const yearlyDays = assumed(ids.days) / assumed(ids.life);
  const month = cheapestMonth(outage, yearlyDays);
  const { what, type, quantity, quantityKind, unitRate, assumptionIds } = outageLine(
    outage,
    yearlyDays,
    month,
  );
  const line: Priced = {
    what: `${what}, to install`,
    type,
    quantity,
    quantityKind,
    unitRate,
    assumptionIds: [...assumptionIds, ids.days, ids.life],
  };
  return { month, line };
}

/** The month in which days out of service cost least. */
function cheapestMonth({ charge, quantity }: Outage, days: number): number {
  let cheapest = 0;
  let least = Infinity;
  for (const month of months) {
    const cost = quantity(days, month) * charge(month).unitRate;
    if (cost >= least) continue;
    cheapest = month;
    least = cost;
  }
  return cheapest;
}
