import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";

/** Structures of a study by whether print tells them one by one, each in the study's order. */
export interface ToldStructures {
  readonly told: readonly TracedStructure[];
  /** All their figures are in the tables as files. */
  readonly others: readonly TracedStructure[];
}

/** Structures whose lines, pipes and racks a report has room for. */
const mostTold = 15;

/** Those of which most is expected in an infestation are told. */
export function toldStructures({ traced }: ReportContext, most = mostTold): ToldStructures {
  const { structures } = traced;
  const dearest = structures
    .toSorted((one, other) => other.cost.expected.comparedTo(one.cost.expected))
    .slice(0, most);
  const isTold = new Set(dearest);
  return {
    told: structures.filter((each) => isTold.has(each)),
    others: structures.filter((each) => !isTold.has(each)),
  };
}

export const allTold = ({ traced }: ReportContext): ToldStructures => ({
  told: traced.structures,
  others: [],
});
