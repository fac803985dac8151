import { exampleText } from "./example.js";

const text = exampleText("ninemoss");
const [first, duties] = ["  - id: village-intake", "  - id: lake-duties"].map((line) => text.indexOf(line));
if (!first || !duties || first < 0 || duties < first) throw new Error("Ninemoss has other structures");

/** Ninemoss with the lake's duties alone of its structures: computed in a fraction of the time of the whole. */
export const smallLakeText: string = text.slice(0, first) + text.slice(duties);
