import fc from "fast-check";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import type { Hunt } from "./hunt.js";
import { judgeStudy } from "./judge-study.js";
import { mutated } from "./mutation.js";
import { smallLakes } from "./studies.js";
import { anyText } from "./values.js";

const most = 200_000;
const pieces = fc.oneof(
  fc.constantFrom(
    "a",
    " ",
    "\n",
    "1",
    "9,",
    "(",
    "[",
    "1 to ",
    "ft ",
    "one of ",
    "**",
    "- ",
    "{{",
    "<b>",
    "\u0301",
    "🦪",
    "=",
    '"',
  ),
  anyText.filter((text) => text !== ""),
);

/** Studies with a text of up to 200,000 characters in one place: a piece over and over, with another at its end. */
export function longHunt(assumptions: AssumptionSet): Hunt<string> {
  const long = fc
    .tuple(pieces, fc.integer({ min: 1000, max: most }), pieces)
    .map(([piece, length, end]) => piece.repeat(Math.ceil(length / piece.length)).slice(0, length) + end);
  const cases = fc.tuple(fc.constantFrom(...smallLakes()), fc.nat(100_000), long).map(([lake, at, value]) => {
    const change = { way: "replace", at, other: 0, value, number: 0, text: "", unit: "" } as const;
    return JSON.stringify(mutated(lake, [change])) ?? "";
  });
  return {
    name: "long texts",
    cases,
    judge: (text) => {
      const verdict = judgeStudy(text, assumptions);
      return { ...verdict, ending: verdict.isComputed ? "computed" : "refused" };
    },
  };
}
