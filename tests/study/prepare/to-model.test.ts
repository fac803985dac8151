import { describe, expect, it } from "vitest";
import { dayNumber, withoutUnits } from "../../../src/study/prepare/to-model.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { parseQuantity } from "../../../src/units/quantity.js";
import { type ExampleName, editedText, exampleText, modelOf } from "../example.js";

const study = (name: ExampleName) => readStudyText(exampleText(name), "study.yaml");

describe("a study as the model takes it", () => {
  it("counts days from 1 January, in a year without 29 February", () => {
    expect(dayNumber("01-01")).toBe(0);
    expect(dayNumber("02-28")).toBe(58);
    expect(dayNumber("03-01")).toBe(59);
    expect(dayNumber("12-31")).toBe(364);
  });

  it("holds the numbers of its quantities and lists of twelve months", () => {
    const document = study("sorrel-bend");
    const input = modelOf(document);
    expect(input.lake.maximumElevation).toBe(document.lake.maximumElevation.value);
    expect(input.lake.surfaceTemperature).toHaveLength(12);
    expect(input.lake.surfaceTemperature[6]).toBe(document.lake.surfaceTemperature.jul.value);
    expect(input.boats.launches[11]).toBe(document.boats.launches.dec.value);
  });

  it("holds a value given once for every month", () => {
    const document = readStudyText(editedText([["structures[ramp].launchesPerDay", 5]]), "study.yaml");
    const ramp = modelOf(document).structures.find((each) => each.kind === "ramp");
    expect(ramp?.launchesPerDay).toEqual(Array(12).fill(5));
  });

  it.each(["sorrel-bend", "ninemoss"] as const)("holds no quantity of %s with its text any more", (name) => {
    expect(JSON.stringify(modelOf(study(name)))).not.toContain('"dimension"');
  });

  it("leaves the document as it was", () => {
    const document = study("ninemoss");
    const before = structuredClone(document);
    modelOf(document);
    expect(document).toEqual(before);
  });

  it("keeps texts, truth values, gaps and numbers that are no quantities", () => {
    const length = parseQuantity("10 ft", "length");
    const plain = { name: "dock", floating: true, count: 3, depth: undefined, lengths: [length] };
    // 10 ft of 0.3048 m each
    expect(withoutUnits(plain)).toEqual({ ...plain, lengths: [expect.closeTo(3.048, 12)] });
  });
});
