import { expect, it } from "vitest";
import { comparedRun, studyDifferences } from "../../../src/study/compared/compared.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions } from "../../report/runs.js";
import { exampleText } from "../example.js";

const text = exampleText("thistledown");
const run = (written: string) => comparedRun(readStudyText(written, "study.yaml"), assumptions);
const plain = run(text);
const own = (id: string, value: string) =>
  text.includes("\noverrides:")
    ? text.replace("\noverrides:", `\noverrides:\n  - { id: ${id}, value: ${value}, reason: mine }`)
    : `${text}\noverrides: [{ id: ${id}, value: ${value}, reason: mine }]\n`;

it("names each part that is kept by another plan, and what its former plan would have cost", () => {
  const dear = run(own("plan.copper-ion.dose-price", "'$0.1/m3'"));
  const { plans } = studyDifferences(plain, dear);
  const rack = plans.find(({ structure, part }) => structure.includes("intake") && part === "conduit");
  expect(rack).toBeDefined();
  for (const { left, right, leftPlanAtRight } of plans) {
    expect(left.plan).not.toBe(right.plan);
    // a plan is changed because the former one would cost no less
    expect(leftPlanAtRight ?? Infinity).toBeGreaterThanOrEqual(right.yearlyCost);
  }
});

it("names none where plans stay, though costs change", () => {
  expect(
    studyDifferences(plain, run(text.replace(/discountRate: [^\n]+/, "discountRate: 3.1 %/yr"))).plans,
  ).toEqual([]);
});
