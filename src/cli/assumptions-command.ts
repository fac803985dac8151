import { loadAssumptions } from "../assumptions/load.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { assumptionRows } from "../report/document/assumptions-list.js";
import { tableText } from "./table-text.js";

/** Prints the assumptions that hold the words, those with them in their title first. */
export function assumptionsCommand(words: string, print: (text: string) => void): void {
  const assumptions = loadAssumptions(assumptionsFolder);
  const rows = assumptionRows({ assumptions, used: undefined, own: new Map() }, "all", words);
  if (rows.length === 0) {
    print(`No assumption has the words “${words}”. Try fewer, or other trade terms.`);
    return;
  }
  print(
    tableText({
      id: "assumptions",
      caption: `${rows.length} of ${assumptions.entries.size} assumptions`,
      head: ["Assumption", "Value", "Low–high", "Basis", "Id"].map(cell),
      rows: rows.map(({ id, name, value, range, basis }) => ({
        cells: [name, value, range, basis, id].map(cell),
      })),
    }),
  );
}

const cell = (text: string) => ({ text, numeric: false });
