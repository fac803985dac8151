import { remembered } from "../computed-once.js";
import type { AssumptionId } from "../register/register.js";
import type { Charge, Cleaning, Component, Outage, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

/** How each subject is cleaned, and the assumptions that price it. */
const bySubject = {
  rack: {
    byName: "cleaned by divers",
    rate: "cleaning.rack.base",
    visit: "cleaning.rack.visit",
    removal: "cleaning.rack.removal",
  },
  conduit: {
    byName: "cleaned by scraper or pig",
    rate: "cleaning.conduit.rate",
    visit: "cleaning.conduit.visit",
    removal: undefined,
  },
  "service-line": {
    byName: "flushed and rodded",
    rate: "cleaning.service-line.rate",
    visit: "cleaning.service-line.visit",
    removal: undefined,
  },
  hull: {
    byName: "cleaned by divers or out of the water",
    rate: "cleaning.hull.rate",
    visit: "cleaning.hull.visit",
    removal: undefined,
  },
  canal: {
    byName: "cleared by machine",
    rate: "cleaning.canal.rate",
    visit: "cleaning.canal.visit",
    removal: undefined,
  },
  lateral: {
    byName: "flushed through their ends",
    rate: "cleaning.lateral.rate",
    visit: "cleaning.lateral.visit",
    removal: undefined,
  },
} as const;

type CleaningSubject = keyof typeof bySubject;

/**
 * Cost of one cleaning: area at a rate and a visit, and on racks what is taken off by its mass, C = g (r F + v + w M): a
 * thick layer takes longer than a thin one (`usgs-1997`, `hull-lists`). All at a share where the work is lighter than usual.
 * @param area priced area, m²
 * @param areaIds assumptions behind it
 */
export function cleaningOf(
  subject: CleaningSubject,
  area: number,
  context: LakeContext,
  areaIds: readonly AssumptionId[] = [],
): Cleaning {
  const name = subject.replace("-", " ");
  const { byName, rate: rateId, visit: visitId, removal } = bySubject[subject];
  const rate = context.assumed(rateId);
  const visit = context.assumed(visitId);
  const lines = (share: number, shareIds: readonly AssumptionId[]) =>
    [
      priced(`cleaning the ${name}`, area, "area", rate * share, [rateId, ...areaIds, ...shareIds]),
      priced(`visits to clean the ${name}`, 1, "visits", visit * share, [visitId, ...shareIds]),
    ].filter((line) => line.unitRate > 0);
  const usual = lines(1, []);
  return {
    byName,
    work: remembered((shareId?: AssumptionId) =>
      shareId === undefined ? usual : lines(context.assumed(shareId), [shareId]),
    ),
    removal: removal === undefined ? () => [] : removalOf(name, removal, context),
  };
}

/** The same of several pieces at once. */
export function timesAsMuch(cleaning: Cleaning, count: number): Cleaning {
  return {
    ...cleaning,
    work: remembered((shareId?: AssumptionId) =>
      cleaning.work(shareId).map((line) => ({ ...line, quantity: line.quantity * count })),
    ),
  };
}

function removalOf(name: string, rateId: AssumptionId, { assumed }: LakeContext): Cleaning["removal"] {
  const rate = assumed(rateId);
  return (mass, shareId) => {
    const share = shareId === undefined ? 1 : assumed(shareId);
    const ids = shareId === undefined ? [rateId] : [rateId, shareId];
    return rate * share > 0
      ? [priced(`taking mussels off the ${name}`, mass, "mass", rate * share, ids)]
      : [];
  };
}

function priced(
  what: string,
  quantity: number,
  quantityKind: Priced["quantityKind"],
  unitRate: number,
  assumptionIds: readonly AssumptionId[],
): Priced {
  return { what, type: "work", quantity, quantityKind, unitRate, assumptionIds };
}

/** What one cleaning costs by keeping the part out of service in a month. */
export function cleaningOutage(
  component: Component,
  assumed: LakeContext["assumed"],
  month: number,
): readonly Priced[] {
  const { outage } = component;
  return outage ? [outageLine(outage, outageDays(component, assumed), month)] : [];
}

export const outageDays = (
  { outageDaysId = "hydropower.outage-days" }: Component,
  assumed: LakeContext["assumed"],
): number => assumed(outageDaysId);

export function outageLine(outage: Outage, days: number, month: number): Priced {
  const { what, type, quantityKind, unitRate, assumptionIds } = outage.charge(month);
  return { what, type, quantity: outage.quantity(days, month), quantityKind, unitRate, assumptionIds };
}

/** Days without a supply for one cleaning of an intake or a line, as far as nothing else bridges them. */
export const supplyOutageIds = ["supply.outage-days", "supply.outage-lost-share"] as const;

/** An outage of a supply: D = d λ of a day's loss, λ the share that tanks, another intake or a quiet night do not bridge. */
export function supplyOutage(
  { assumed }: Pick<LakeContext, "assumed">,
  loss: Omit<Charge, "assumptionIds">,
  quantity: Outage["quantity"],
): Pick<Component, "outage" | "outageDaysId"> {
  const lostShare = assumed("supply.outage-lost-share");
  const { what, type, quantityKind, unitRate } = loss;
  const charge: Charge = { what, type, quantityKind, unitRate, assumptionIds: supplyOutageIds };
  return {
    outageDaysId: "supply.outage-days",
    outage: { charge: () => charge, quantity: (days, month) => quantity(days * lostShare, month) },
  };
}
