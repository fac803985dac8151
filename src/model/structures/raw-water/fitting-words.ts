import { counted } from "../../../counted.js";
import { sumOf } from "../../../lists.js";
import { type SizeWord, sized } from "../structure-kind.js";
import { type Fittings, hasFittings } from "./fittings.js";

/** What a line carries and serves, after its bore; nothing of a line without any of it. */
export function fittingWords(line: Fittings, name = ""): SizeWord[] {
  const { serves, strainer, coolers = [], orifices = [] } = line;
  const words: SizeWord[] = serves === undefined ? [] : [` for ${serves}`];
  if (strainer) words.push(`, ${strainer.type} strainer of `, sized(strainer.mesh, "smallLength"), " mesh");
  for (const { name: cooler, count, tubes, bore, passes } of coolers) {
    const of = `${count} × ${counted(tubes, "tube")} of `;
    words.push(`, ${cooler}: ${of}`, sized(bore, "smallLength"), ` in ${counted(passes, "pass", "passes")}`);
  }
  const narrow = sumOf(orifices.map(({ count }) => count));
  if (narrow > 0) words.push(`, ${counted(narrow, "orifice")}`);
  const isNamed = name !== "" && (hasFittings(line) || serves !== undefined);
  return isNamed ? [`; ${name}`, ...words] : words;
}
