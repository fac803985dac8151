import type { RackFormula } from "../../model/structures/inputs.js";

/** Names of the formulas of rack losses as readers know them. */
export const formulaNames: Readonly<Record<RackFormula, string>> = {
  meusburger: "Meusburger",
  kirschmer: "Kirschmer",
  reclamation: "Reclamation",
  clark: "Clark",
};
