import { at } from "../../lists.js";
import type { StudyDocument } from "../format/schema.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { boatsOf, type PlainBoats, plainBoats } from "../prepare/to-model.js";
import { coverageOf, trafficOf } from "../prepare/traffic.js";
import { classChances } from "../prepare/vessel-chances.js";
import { withValues } from "../reading/ranged.js";
import { type MovedQuantity, numbersIn, type Values } from "./moved-quantities.js";

/** A study with values in place, with the boats as the study has them. */
export interface StudyInPlace extends Pick<PreparedStudy, "chances" | "input"> {
  readonly boats: PlainBoats;
}

export const isOfBoats = ({ path }: MovedQuantity): boolean => path[0] === "boats";

/** Shares of the launch sites, which move traffic; how many launches a year has moves no share of them. */
const isOfSites = ({ path }: MovedQuantity) => path[1] === "sites";

/** Puts what is drawn of some quantities of the boats into a study, with what is worked out of them. */
export function boatsDrawing(
  document: StudyDocument,
  { assumed, estimate, traffic }: PreparedStudy,
  quantities: readonly MovedQuantity[],
): (study: StudyInPlace, values: Values) => StudyInPlace {
  const plain = plainBoats(document.boats);
  const others = quantities
    .map((each) => ({ ...each, path: each.path.slice(1) }))
    .filter(({ path: [group = ""] }) => group in plain);
  const withDrawn = numbersIn(plain, others);
  const movesShares = others.some(({ path }) => path.includes("fouled"));
  const inTraffic = sitesDrawing(document, quantities.filter(isOfSites));
  return (study, values) => {
    const boats = withDrawn(study.boats, values);
    if (boats === study.boats) return inTraffic(study, values);
    const chances = movesShares ? classChances(boats, document.boats.seasons, assumed) : study.chances;
    const input = { ...study.input, boats: boatsOf(boats, document.money, { chances, traffic, estimate }) };
    return inTraffic({ boats, chances, input }, values);
  };
}

function sitesDrawing(document: StudyDocument, ofSites: readonly MovedQuantity[]) {
  return (study: StudyInPlace, values: Values): StudyInPlace => {
    if (ofSites.length === 0) return study;
    const { boats } = withValues(
      { boats: document.boats },
      ofSites.map(({ id, path, quantity }) => ({ path, value: values.get(id) ?? quantity.value })),
    );
    const traffic = trafficOf(boats);
    const { input } = study;
    const options = input.options.map((option, index) => {
      const { hours } = at(document.options, index);
      if (!option.steps || !hours) return option;
      return { ...option, steps: { ...option.steps, coverage: coverageOf(hours, boats, traffic) } };
    });
    return {
      ...study,
      input: { ...input, options, boats: { ...input.boats, traffic: traffic?.entered } },
    };
  };
}
