import fc from "fast-check";
import { stringify } from "yaml";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import { sweepCsv } from "#product/forms/sweep-csv.js";
import { parsedStudyText } from "#product/study/reading/read.js";
import { sweep } from "#product/study/swept/sweep.js";
import { notFinite } from "./fault.js";
import type { Hunt } from "./hunt.js";
import { judgeWork } from "./judge-work.js";
import { smallLakes } from "./studies.js";
import { anyNumber, anyText, units } from "./values.js";

/** Values at which a study is computed, one list for each place or assumption. */
export type SweptCase = readonly { readonly id: string; readonly values: readonly (string | number)[] }[];

const ids = [
  ...["money.discountRate", "money.horizon", "lake.chemistry.calcium", "lake.species", "structures[0].name"],
  ...[
    "options[1].steps.coverage",
    "options[summer-checks].steps.coverage",
    "options[9].name",
    "lake",
    "study",
  ],
  ...["growth.settlers-per-month", "settlement.no-velocity", "drying.steepness", "cleaning.rack.visit"],
  ...[
    "growth.yearly-mortality",
    "hydraulics.viscosity",
    "money.none",
    "__proto__",
    "lake.__proto__.x",
    "[]",
    "",
  ],
];

const value = fc.oneof(
  { arbitrary: anyNumber, weight: 3 },
  { arbitrary: fc.tuple(anyNumber, fc.constantFrom(...units)).map((parts) => parts.join(" ")), weight: 3 },
  { arbitrary: anyText, weight: 1 },
);

export function sweepHunt(assumptions: AssumptionSet): Hunt<SweptCase> {
  const [lake] = smallLakes();
  const parsed = parsedStudyText(stringify(lake), "lake.yaml");
  const one = fc.record({ id: fc.constantFrom(...ids), values: fc.array(value, { maxLength: 3 }) });
  return {
    name: "sweeps",
    cases: fc.array(one, { minLength: 1, maxLength: 2 }),
    judge: (swept) =>
      judgeWork(() => {
        const result = sweep(parsed, swept, assumptions);
        const wrong = notFinite(result.points.map(({ options }) => options));
        const told = /NaN|undefined|\[object/.exec(sweepCsv({ ...result, swept: [] }))?.[0];
        const isAnswered = result.points.some(({ options }) => options.length > 0);
        return {
          faults: [
            ...(wrong === undefined ? [] : [{ what: "not finite", detail: wrong }]),
            ...(told === undefined ? [] : [{ what: "not finite in a table", detail: told }]),
          ],
          ending: isAnswered ? "computed" : "no point computed",
        };
      }),
  };
}
