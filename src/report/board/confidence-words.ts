import type { Confidence } from "../../study/traced/confidence.js";
import { listedWithin, percent } from "../words/format.js";

/** A level of confidence with what decides it: "low confidence: one number decides, “calcium”". */
export const confidenceText = (confidence: Confidence): string =>
  `${confidence.level} confidence: ${reasonOf(confidence)}`;

function reasonOf({ reversing, isFirm, disagreeing, judgedShare, evidence, agreement }: Confidence): string {
  const [first, ...others] = reversing;
  if (isFirm) return "nothing within reason changes the answer";
  if (first !== undefined) {
    return others.length === 0
      ? decidesText(first)
      : `any one of ${reversing.length} inputs could reverse the answer`;
  }
  if (disagreeing.length > 0)
    return `${listedWithin(disagreeing.map(whatDisagrees), disagreeing.length)} disagree`;
  if (evidence !== "high") return `${mostlyText(judgedShare)} of what decides it is judged or from memory`;
  return agreement === "high" ? "what decides it is published, counted or entered" : "its routes agree";
}

/** What moves together is a group by its name. */
function decidesText(name: string): string {
  const group = /^(.*), together$/.exec(name)?.[1];
  return `the answer rests on ${group === undefined ? `one number, “${name}”` : `one group of numbers, “${group}”`}`;
}

const pairs: Readonly<Record<Confidence["disagreeing"][number], string>> = {
  "central case": "averages and central values",
  "two accounts": "the two accounts",
  "two routes to the chance": "estimates of the chance from fouled launches and from comparable lakes",
  "two species": "the two species of mussels",
};

const whatDisagrees = (each: Confidence["disagreeing"][number]) => pairs[each];

const mostlyText = (share: number) => (share > 0.95 ? "nearly all" : percent(share));
