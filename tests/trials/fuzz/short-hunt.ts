import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { parse, stringify } from "yaml";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import { firstStudy } from "#product/editor/first-study.js";
import { examplesFolder } from "#product/report/document/assets.js";
import { shortFactsOf } from "#product/study/short/read-facts.js";
import type { Hunt } from "./hunt.js";
import { judgedStudy, judgeWork } from "./judge-work.js";
import { mutated, mutation } from "./mutation.js";

/** Short studies changed in one to four places; what is taken is made a full study and computed. */
export function shortHunt(assumptions: AssumptionSet): Hunt<string> {
  const folder = join(examplesFolder, "short");
  const shipped = readdirSync(folder).map((name): unknown => parse(readFileSync(join(folder, name), "utf8")));
  const cases = fc
    .tuple(fc.constantFrom(...shipped), fc.array(mutation, { minLength: 1, maxLength: 4 }))
    .map(([base, changes]) => stringify(mutated(base, changes), { aliasDuplicateObjects: false }));
  const { entries } = assumptions;
  return {
    name: "short studies",
    cases,
    judge: (text) =>
      judgeWork(() => {
        const facts = shortFactsOf(text, "the short study", entries);
        return judgedStudy(firstStudy(facts, entries, "2026-01-01"), assumptions);
      }),
  };
}
