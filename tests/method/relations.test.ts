import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Relation } from "../../src/method/relations/relation.js";
import { relationGroups } from "../../src/method/relations.js";
import { relationsView } from "../../src/method/relations-view.js";
import { projectRoot } from "../../src/project-root.js";
import { typeset } from "../../src/report/words/typeset.js";
import { assumptions } from "../report/runs.js";

const relations = relationGroups.flatMap((group) => group.relations);
const cases = relations.map((relation) => [relation.title, relation] as const);

const oneLine = (text: string) => text.replace(/\s+/g, " ");

/** The comment that stands before an exported function. */
function commentOf({ computedBy: { file, name } }: Relation): string {
  const source = readFileSync(join(projectRoot, "src", "model", file), "utf8");
  const before = source.split(new RegExp(`export function ${name}\\b`))[0] ?? "";
  const comment = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*$/.exec(before)?.[1] ?? "";
  return oneLine(comment.replace(/^\s*\* ?/gm, ""));
}

/** Ways in which a comment may name a source: its key, its first author, its doi. */
function namesOf(key: string): string[] {
  const citation = assumptions.sources.get(key)?.citation ?? "";
  const author = /^(.+?)(?:\.| [A-Z]\.|,| \d{4}| \()/.exec(citation)?.[1] ?? citation;
  const doi = /doi (\S+)/.exec(citation)?.[1];
  return [key, author, ...(doi ? [doi] : [])];
}

/** Sources that have no author to name. */
const ownSources = new Set(["trade-practice", "project-judgement"]);

describe("a relation of the appendix", () => {
  it.each(cases)("is computed by a function of the model: %s", async (_title, { computedBy }) => {
    const module: Record<string, unknown> = await import(
      /* @vite-ignore */ join(projectRoot, "src", "model", computedBy.file)
    );
    expect(typeof module[computedBy.name]).toBe("function");
  });

  it.each(cases)("reads as its function's comment does: %s", (_title, relation) => {
    const comment = commentOf(relation);
    for (const { text } of relation.formulas) expect(comment).toContain(oneLine(text));
  });

  it.each(cases)(
    "has sources that are listed, and named by its function's comment: %s",
    (_title, relation) => {
      expect(relation.sources.length).toBeGreaterThan(0);
      for (const key of relation.sources) expect(assumptions.sources.has(key), key).toBe(true);
      const comment = commentOf(relation);
      const published = relation.sources.filter((key) => !ownSources.has(key));
      const named = published.filter((key) => namesOf(key).some((name) => comment.includes(name)));
      expect(named).toEqual(published);
    },
  );

  it.each(cases)("uses each symbol that it explains: %s", (_title, { formulas, where }) => {
    const text = formulas.map(({ left = "", text: right }) => `${left} ${right}`).join(" ");
    for (const [symbol] of where) expect(text).toContain(symbol.replace("_", ""));
  });
});

describe("the register of relations", () => {
  it("can be typeset: each letter of a formula is a symbol that is explained, or a known name", () => {
    expect(() => relationsView()).not.toThrow();
    expect(() => typeset("h = f L/D", ["h", "L", "D"])).toThrow(/“f” is not explained/);
  });

  // A study may override any assumption: a coefficient repeated in fixed text would then be untrue.
  it("repeats no coefficient of the assumptions", () => {
    const text = relations
      .map(({ words, formulas, where }) =>
        [words, ...formulas.map((each) => each.text), ...where.flat()].join(" "),
      )
      .join(" ");
    const printed = new Set(text.match(/\d+\.\d+/g));
    const published = [
      "0.6112",
      "17.62",
      "243.12",
      "3.7",
      "2.51",
      "1.852",
      "4.8704",
      "10.67",
      "1.45",
      "0.45",
      "7.43",
      "9.81",
    ];
    // 1.5 is also Meusburger's exponent, which no study overrides.
    const values = [...assumptions.entries.values()].map(({ value }) => String(Math.abs(value)));
    for (const number of printed) {
      if (!published.includes(number) && number !== "1.5") expect(values).not.toContain(number);
    }
    expect([...printed].filter((number) => !published.includes(number))).toEqual(["1.5"]);
  });

  it("covers what the estimate rests on", () => {
    const names = new Set(relations.map(({ computedBy }) => computedBy.name));
    for (const name of [
      "dailyElevations",
      "dryRuns",
      "storageBetween",
      "suitability",
      "densityShare",
      "degreeDays",
      "grownLengthMm",
      "wetMassG",
      "depthFactor",
      "velocityFactor",
      "growTo",
      "layerThickness",
      "survival",
      "frostKillHours",
      "roughnessRatio",
      "pipeHeadLoss",
      "frictionFactor",
      "hazenWilliamsLoss",
      "pumpCurve",
      "operatingPoint",
      "relativeSpeed",
      "turbineEfficiency",
      "counterflowEffectiveness",
      "fouledCoefficient",
      "clarkLoss",
      "keepInService",
      "protectionOf",
      "killDays",
      "workLines",
      "storageLost",
      "operatingLines",
      "optionResult",
      "meusburgerLoss",
      "kirschmerLoss",
      "reclamationLoss",
      "pumpPower",
      "hydroPower",
      "yearlyHazard",
      "expectedByYear",
      "discountFactor",
      "capitalRecoveryFactor",
      "compare",
      "breakEven",
      "inspectionCost",
      "fullCostFee",
      "increment",
    ]) {
      expect(names).toContain(name);
    }
  });
});

describe("typesetting", () => {
  it("sets symbols in italics, indices low, exponents high, and names upright", () => {
    expect(typeset("kF (s/b)^(4/3) sin α", ["k_F", "s", "b", "α"])).toBe(
      "<i>k<sub>F</sub></i> (<i>s</i>/<i>b</i>)<sup>4/3</sup> sin <i>α</i>",
    );
    expect(typeset("1/√f = −2 log₁₀[2]", ["f"])).toBe(
      '1/√<span class="under-root"><i>f</i></span> = −2 log<sub>10</sub>[2]',
    );
    expect(typeset("z < e", ["z", "e"])).toBe("<i>z</i> &lt; <i>e</i>");
  });
});
