import type { Cleaning, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

/** Names of the price entries of a component: `cleaning.<subject>.rate` and `cleaning.<subject>.visit`. */
export type CleaningSubject = "rack" | "conduit" | "service-line" | "hull";

const bySubject: Record<CleaningSubject, string> = {
  rack: "cleaned by divers",
  conduit: "cleaned by scraper or pig",
  "service-line": "flushed and rodded",
  hull: "cleaned by divers or on the hard",
};

/**
 * Cost of one cleaning: area at a rate, and a visit; both at a share where the work is lighter than usual.
 * @param area priced area, m²
 */
export function cleaningOf(subject: CleaningSubject, area: number, context: LakeContext): Cleaning {
  const name = subject.replace("-", " ");
  const rateId = `cleaning.${subject}.rate`;
  const visitId = `cleaning.${subject}.visit`;
  const rate = context.assumed(rateId);
  const visit = context.assumed(visitId);
  const lines = (share: number, shareIds: readonly string[]) =>
    [
      priced(`cleaning the ${name}`, area, "area", rate * share, [rateId, ...shareIds]),
      priced(`visits to clean the ${name}`, 1, "visits", visit * share, [visitId, ...shareIds]),
    ].filter((line) => line.unitRate > 0);
  const usual = lines(1, []);
  return {
    byName: bySubject[subject],
    work: (shareId) => (shareId === undefined ? usual : lines(context.assumed(shareId), [shareId])),
  };
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
