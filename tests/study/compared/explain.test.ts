import { describe, expect, it } from "vitest";
import { assumptionDifferences } from "../../../src/study/compared/assumption-differences.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { explainDifference } from "../../../src/study/compared/explain.js";
import { inputDifferences } from "../../../src/study/compared/input-differences.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions } from "../../report/runs.js";
import { editedText, exampleDocument, valueAt } from "../example.js";

type Edits = Parameters<typeof editedText>[0];

/** The structures that the tests change: the others would be compared as often, and show nothing. */
const structures = ["village-intake", "jetty", "lake-duties"].map((id) =>
  valueAt(exampleDocument("ninemoss"), `structures[${id}]`),
);
const study = (...edits: Edits): StudyDocument =>
  readStudyText(
    editedText([["structures", structuredClone(structures)], ...edits], "ninemoss"),
    "study.yaml",
  );
const plain = study();

function explain(left: StudyDocument, right: StudyDocument) {
  const [one, other] = [left, right].map((document) => ({ document, assumptions }));
  if (!one || !other) throw new Error("two studies");
  const used = new Set(assumptions.entries.keys());
  const differences = [...inputDifferences(left, right), ...assumptionDifferences(one, other, used)];
  return explainDifference(one, other, differences);
}

const cents = (amount: { toNumber: () => number }) => Math.round(amount.toNumber() * 100);
const known = new WeakMap<StudyDocument, ReturnType<typeof comparedRun>["comparison"]>();
function comparisonOf(document: StudyDocument) {
  const comparison = known.get(document) ?? comparedRun(document, assumptions).comparison;
  known.set(document, comparison);
  return comparison;
}
const netBenefit = (document: StudyDocument) => {
  const { options } = comparisonOf(document);
  const found = options.find(({ result }) => result.option.id === document.study.requestedOption);
  if (!found) throw new Error("no option is requested");
  return cents(found.netBenefit);
};
const infestation = (document: StudyDocument) =>
  cents(comparisonOf(document).baseline.presentValue.infestation);

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

const training: Edits[number] = ["options[summer-checks].yearly[0].cost", "€2,300/yr"];
const tows: Edits[number] = ["options[summer-checks].yearly[2].count", 12];
const duties: Edits[number] = ["structures[lake-duties].items[0].cost", "€9,000/yr"];
const establishment: Edits[number] = [
  "overrides",
  [{ id: "arrival.founding-unknown", value: "0.01", reason: "invented" }],
];

describe("what explains a difference", () => {
  it("is all of it, where one input changed", async () => {
    const right = study(duties);
    const { parts, left: before, right: after } = await explain(plain, right);
    expect(parts).toHaveLength(1);
    expect(parts[0]?.groups[0]?.name).toBe("cost of Monitoring after infestation, Lake-wide duties");
    expect(parts[0]?.netBenefit).toBe(netBenefit(right) - netBenefit(plain));
    expect(parts[0]?.infestation).toBe(infestation(right) - infestation(plain));
    expect(before.netBenefit).toBe(netBenefit(plain));
    expect(after.infestation).toBe(infestation(right));
  });

  it("is what each change does by itself, where they only add up: two cost lines of a program", async () => {
    const { parts } = await explain(plain, study(training, tows));
    expect(parts.map((part) => part.groups[0]?.name)).toEqual([
      "cost of Training of checkers, Staffed summer checks",
      "count of Plankton tows, Staffed summer checks",
    ]);
    const alone = [training, tows].map((edit) => netBenefit(study(edit)) - netBenefit(plain));
    parts.forEach((part, index) => {
      expect(Math.abs((part.netBenefit ?? 0) - (alone[index] ?? 0))).toBeLessThanOrEqual(1);
      expect(part.infestation).toBe(0);
    });
  });

  it("is the mean of both orders, where two changes work together: chance and cost of an infestation", async () => {
    const [chance, cost, both] = [study(establishment), study(duties), study(establishment, duties)];
    const { parts } = await explain(plain, both);
    const ofCost = (infestation(cost) - infestation(plain) + infestation(both) - infestation(chance)) / 2;
    const ofChance = (infestation(chance) - infestation(plain) + infestation(both) - infestation(cost)) / 2;
    expect(Math.abs((parts[0]?.infestation ?? 0) - ofCost)).toBeLessThanOrEqual(1);
    expect(Math.abs((parts[1]?.infestation ?? 0) - ofChance)).toBeLessThanOrEqual(1);
    expect(parts[1]?.groups[0]?.name).toBe(
      "chance that a fouled launch of unknown origin founds a population",
    );
  });

  it("joins changes of which one alone would contradict the study: shares of classes that make up 100 %", async () => {
    const shares: Edits = [
      ["boats.classes[resident].share", "60 %"],
      ["boats.classes[visitors].share", "38 %"],
      duties,
    ];
    const right = study(...shares);
    const { parts } = await explain(plain, right);
    expect(parts.map(({ groups }) => groups.map(({ name }) => name))).toEqual([
      ["cost of Monitoring after infestation, Lake-wide duties"],
      ["share of Kept at the lake", "share of Visitors from waters without mussels"],
    ]);
    expect(sum(parts.map((part) => part.netBenefit ?? Number.NaN))).toBe(
      netBenefit(right) - netBenefit(plain),
    );
  });

  it("leaves the net benefit alone where different options are requested", async () => {
    const { parts, left } = await explain(plain, study(["study.requestedOption", "signs"], duties));
    expect(left.netBenefit).toBeUndefined();
    expect(sum(parts.map((part) => part.infestation))).toBe(infestation(study(duties)) - infestation(plain));
  });

  it("tells of no parts where only names differ", async () => {
    const { parts } = await explain(plain, study(["structures[jetty].name", "Old jetty"]));
    expect(parts).toEqual([]);
  });

  const nine: Edits = [
    ["structures[village-intake].rack.width", "1 m"],
    ["structures[village-intake].rack.height", "1 m"],
    ["structures[village-intake].rack.clearSpacing", "45 mm"],
    ["structures[village-intake].conduit.length", "700 m"],
    ["structures[village-intake].conduit.diameter", "240 mm"],
    ["structures[jetty].wettedArea", "50 m2"],
    ["structures[jetty].replacementCost", "€45,000"],
    training,
    tows,
  ];

  it("explains those of nine changes and more that matter one by one, and the others as one", async () => {
    const right = study(...nine);
    const { parts } = await explain(plain, right);
    expect(parts).toHaveLength(8);
    const names = parts.map(({ groups }) => groups.map(({ name }) => name).join());
    expect(names).toContain("cost of Training of checkers, Staffed summer checks");
    expect(names).toContain("count of Plankton tows, Staffed summer checks");
    const [rest] = parts.at(-1)?.groups ?? [];
    expect(rest?.name).toBe("all other changes");
    expect(rest?.inputs).toHaveLength(2);
    expect(sum(parts.map((part) => part.netBenefit ?? Number.NaN))).toBe(
      netBenefit(right) - netBenefit(plain),
    );
    // none of the small ones does more by itself than it is said to do at most
    for (const { place } of rest?.inputs ?? []) {
      const edit = nine.find(([path]) => path.replace(/[[\].]+/g, "/") === place);
      if (!edit) throw new Error(place);
      const alone = Math.abs(netBenefit(study(edit)) - netBenefit(plain));
      expect(alone).toBeLessThanOrEqual((rest?.mostAlone ?? 0) + 1);
    }
  });

  it("keeps changes together that would contradict the study alone, also among many", async () => {
    const right = study(
      ...nine,
      ["boats.classes[resident].share", "60 %"],
      ["boats.classes[visitors].share", "38 %"],
    );
    const { parts } = await explain(plain, right);
    const joined = parts.find(({ groups }) => groups.length > 1);
    expect(joined?.groups.map(({ name }) => name)).toEqual([
      "share of Kept at the lake",
      "share of Visitors from waters without mussels",
    ]);
    expect(sum(parts.map((part) => part.netBenefit ?? Number.NaN))).toBe(
      netBenefit(right) - netBenefit(plain),
    );
  });
});
