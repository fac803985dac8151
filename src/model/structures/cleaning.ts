import type { Cleaning, Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Plan } from "./plan.js";

/** Names of the price entries of a component: `cleaning.<subject>.rate` and `cleaning.<subject>.visit`. */
export type CleaningSubject = "rack" | "conduit" | "service-line" | "hull";

const bySubject: Record<CleaningSubject, string> = {
  rack: "cleaned by divers",
  conduit: "cleaned by scraper or pig",
  "service-line": "flushed and rodded",
  hull: "cleaned by divers or on the hard",
};

/**
 * Cost of one cleaning: area at a rate, and a visit. In the dry both cost a share of it.
 * @param area priced area, m²
 * @param outage what a cleaning interrupts, if anything
 */
export function cleaningOf(
  subject: CleaningSubject,
  area: number,
  context: LakeContext,
  outage: (month: number) => readonly Priced[] = () => [],
): Cleaning {
  const rateId = `cleaning.${subject}.rate`;
  const visitId = `cleaning.${subject}.visit`;
  const rate = context.assumed(rateId);
  const visit = context.assumed(visitId);
  const dryShare = context.assumed("cleaning.dry-share");
  return {
    byName: bySubject[subject],
    work: (method, month) => {
      const share = method === "dry" ? dryShare : 1;
      const shareIds = method === "dry" ? ["cleaning.dry-share"] : [];
      return [
        priced(`cleaning the ${subject.replace("-", " ")}`, area, "area", rate * share, [
          rateId,
          ...shareIds,
        ]),
        priced(`visits to clean the ${subject.replace("-", " ")}`, 1, "visits", visit * share, [
          visitId,
          ...shareIds,
        ]),
        ...outageOf(method, outage, month),
      ].filter((line) => line.unitRate > 0);
    },
  };
}

function outageOf(method: Plan["method"], outage: (month: number) => readonly Priced[], month: number) {
  return method === "leave" ? [] : outage(month);
}

function priced(
  what: string,
  quantity: number,
  quantityKind: Priced["quantityKind"],
  unitRate: number,
  assumptionIds: readonly string[],
): Priced {
  return { what, type: "work", quantity, quantityKind, unitRate, assumptionIds };
}
