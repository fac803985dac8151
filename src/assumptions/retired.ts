import { type Expected, price, share } from "../model/register/expected.js";

/** What an assumption that the model reads no longer is held to, and the one in its place. */
interface Retired extends Expected {
  readonly now: string;
}

/** Files of reports that were issued by earlier versions hold these still. */
export const retired: ReadonlyMap<string, Retired> = new Map([
  ["oxidant.start-density", { ...share, now: "protection.start-density" }],
  ["arrival.establishment-per-fouled-launch", { ...share, now: "arrival.founding-unknown" }],
  ["checks.plant-cost-low", { ...price("$"), now: "checks.water-cost.small-low" }],
  ["cleaning.rack.rate", { ...price("$/m2"), now: "cleaning.rack.base" }],
]);
