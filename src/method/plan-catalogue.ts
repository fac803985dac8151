import type { AssumptionSet } from "../assumptions/entry.js";
import type { Measure } from "../model/register/plan-numbers.js";
import { capitalised } from "../report/words/format.js";
import { head, row, type TableView } from "../report/words/view-types.js";

const mechanism: Record<Measure, string> = {
  leave: "Nothing is done, and the losses of a full layer are borne.",
  clean: "Mussels are taken off at fixed dates.",
  dry: "Mussels are taken off once a year, in the month in which the part is exposed longest. In years without a window the part is kept by whatever costs least then and installs nothing.",
  trigger: "Looked at every month, and cleaned when the layer nears one that passes a limit.",
  coating: "A coat on which fewer mussels settle and from which they come off more easily.",
  "oxidant-season": "Oxidant is fed to the water while mussels settle, and kills most of what settles.",
  "oxidant-end":
    "Oxidant is fed once, at the end of settlement, for as long as it takes to kill the year's growth.",
  "chemical-season":
    "Another chemical is fed to the water while mussels settle, and kills most of what settles.",
  filter:
    "Strains the water, with light behind the strainer or without, so that few larvae reach the part alive.",
  heat: "Hot water fills the line for as long as it takes to kill what is there.",
  "second-line": "One of two lines carries the water while mussels in the other die without oxygen.",
};

/** Every way of keeping a part in service that a study's parts are offered. */
export const planCatalogue = ({ plans }: AssumptionSet): TableView => ({
  id: "table-plan-catalogue",
  caption: "Protection plans",
  head: head("Plan", "What it does", "Side effects", "Permits", "Cautions"),
  rows: plans.map(({ name, measure, sideEffects, permits, cautions }) =>
    row(capitalised(name), mechanism[measure], sideEffects, permits, cautions),
  ),
  note: "Local codes and the judgment of licensed engineers take precedence.",
  compact: true,
});
