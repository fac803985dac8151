import { describe, expect, it } from "vitest";
import {
  type ComparedRun,
  comparedRun,
  explained,
  studyDifferences,
} from "../../../src/study/compared/compared.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions, exampleRun } from "../../report/runs.js";
import { editedText } from "../example.js";

type Edits = Parameters<typeof editedText>[0];

function run(edits: Edits = [], text = (written: string) => written): ComparedRun {
  const document = readStudyText(text(editedText(edits, "ninemoss")), "study.yaml");
  return comparedRun(document, assumptions);
}

const plain = run();

describe("two studies", () => {
  it("that are the same differ in nothing", () => {
    const found = studyDifferences(plain, plain);
    expect(found.inputs).toEqual([]);
    expect(found.limits).toEqual([]);
    expect(found.results.every(({ difference }) => difference === undefined || difference === 0)).toBe(true);
  });

  it("tell the figures of each option and the cost of each structure on both sides", () => {
    const right = run([["structures[lake-duties].items[0].cost", "€9,000/yr"]]);
    const { results } = studyDifferences(plain, right);
    const of = (id: string, figure: string) =>
      results.find((each) => each.id === id && each.figure === figure);
    const before = plain.comparison.baseline.presentValue.infestation.toNumber();
    expect(of("none", "infestation")).toMatchObject({ left: before });
    expect(of("lake-duties", "structureCost")?.difference).toBeCloseTo(
      (of("lake-duties", "structureCost")?.left ?? 0) / 2,
      4,
    );
    const structures = results.filter((each) => each.of === "structure");
    const sum = structures.reduce((total, { difference = 0 }) => total + difference, 0);
    expect(sum).toBeCloseTo(of("none", "infestation")?.difference ?? Number.NaN, 6);
    expect(of("summer-checks", "benefitCostRatio")?.left).toBeGreaterThan(0);
  });

  it("tell own values of assumptions with their reasons, and an option that one of them lacks", () => {
    const id = "growth.settlers-per-month";
    const right = run([["overrides", [{ id, value: "1500", reason: "plates of 2025" }]]]);
    const found = studyDifferences(plain, right).inputs;
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      place: `assumptions/${id}`,
      right: "1500, own value: plates of 2025",
      movesFigures: true,
    });
  });

  it("tell an assumption of the files that was changed between two versions of them", () => {
    const id = "arrival.founding-unknown";
    const entry = assumptions.entries.get(id);
    if (!entry) throw new Error("no such assumption");
    const changed = {
      ...assumptions,
      entries: new Map(assumptions.entries).set(id, { ...entry, value: 0.002 }),
    };
    const found = studyDifferences(plain, { ...plain, assumptions: changed }).inputs;
    expect(found.map(({ place }) => place)).toEqual([`assumptions/${id}`]);
    expect(found[0]?.left).toBe(`${entry.value} share`);
  });

  it("in different currencies are told not to compare, and nothing is explained", async () => {
    const dollars = run([], (text) => text.replaceAll("€", "$").replaceAll("EUR", "USD"));
    const found = studyDifferences(plain, dollars);
    expect(found.moneyCompares).toBe(false);
    expect(found.limits.join(" ")).toContain("different currencies, EUR and USD");
    expect(await explained(plain, dollars, found)).toBeUndefined();
  });

  it("that request different options say so by their names", () => {
    const found = studyDifferences(plain, run([["study.requestedOption", "signs"]]));
    expect(found.limits).toEqual([
      expect.stringContaining("“Staffed summer checks” and “Signs and self-declaration”"),
    ]);
  });

  it("of different lakes are told by part, first the part whose figure differs most, and not explained by input", async () => {
    const pair = [exampleRun("sorrel-bend"), exampleRun("copperhithe")] as const;
    const found = studyDifferences(...pair);
    expect(await explained(...pair, found)).toBeUndefined();
    const ratios = found.parts.map(({ left, right }) => right / left);
    const size = (ratio: number) => Math.max(ratio, 1 / ratio);
    expect(ratios.map(size)).toEqual(ratios.map(size).toSorted((one, other) => other - one));
    const of = (part: string) => found.parts.find((each) => each.part === part);
    const result = (id: string, figure: string) =>
      found.results.find((each) => each.id === id && each.figure === figure);
    expect(of("boats")?.left).toBe(result("none", "hazard")?.left);
    expect(of("program")?.left).toBe(result(pair[0].document.study.requestedOption, "programPerYear")?.left);
    // The annuity formula, each year's 1 paid in its middle.
    const { discountRate, horizon } = pair[0].comparison.input.money;
    const annuity = ((1 - (1 + discountRate) ** -horizon) / discountRate) * Math.sqrt(1 + discountRate);
    expect(of("money")?.left).toBeCloseTo(annuity, 8);
  });

  it("of a lake that is infested already have no chance of it beside another's", () => {
    const { parts } = studyDifferences(exampleRun("sorrel-bend"), exampleRun("thistledown"));
    expect(parts.map(({ part }) => part)).toContain("structures");
    expect(parts.map(({ part }) => part)).not.toContain("boats");
  });

  it("of first estimates are of different lakes where structures of one name stand elsewhere", () => {
    const elsewhere = run([
      ["lake.name", "Ninemoss Water"],
      ...plain.document.structures.flatMap((each, index): [string, string][] =>
        "elevation" in each ? [[`structures[${index}].elevation`, "300 m"]] : [],
      ),
    ]);
    expect(studyDifferences(plain, elsewhere).parts.length).toBeGreaterThan(0);
  });

  it("of one lake under a new name are explained as before", () => {
    const renamed = run([["lake.name", "Ninemoss Water"]]);
    expect(studyDifferences(plain, renamed).parts).toEqual([]);
  });
});
