import { exampleText } from "./example.js";

const text = exampleText("ninemoss");
const [first, duties] = ["  - id: village-intake", "  - id: lake-duties"].map((line) => text.indexOf(line));
if (!first || !duties || first < 0 || duties < first) throw new Error("Ninemoss has other structures");

/** Ninemoss with the lake's duties alone of its structures: computed in a fraction of the time of the whole. */
export const smallLakeText: string = text.slice(0, first) + dutiesAlone(text.slice(duties));

/** What follows the structures comes after the duties, whatever structures stand between. */
function dutiesAlone(rest: string): string {
  const next = rest.indexOf("\n  - id: ");
  const boats = rest.indexOf("\nboats:");
  return next >= 0 && next < boats ? rest.slice(0, next) + rest.slice(boats) : rest;
}
