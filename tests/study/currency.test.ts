import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { exampleText } from "./example.js";

describe("amounts in another currency than the study's", () => {
  it("are refused at their place, since they would be read as the study's own", () => {
    const text = exampleText("ninemoss").replace('price: "€15,000"', 'price: "£15,000"');
    expect(() => readStudyText(text, "lake.yaml")).toThrow(
      /options\[2 "summer-checks"\]\.equipment\[0\]\.price: found "£15,000"; allowed: an amount in the study's currency, EUR/,
    );
  });

  it("are refused in overrides as well", () => {
    const text = `${exampleText("ninemoss")}\noverrides:\n  - { id: labour.maintenance-rate, value: "$70/h", reason: ours }\n`;
    expect(() => readStudyText(text, "lake.yaml")).toThrow(
      /overrides\[0 "labour.maintenance-rate"\]\.value: found "\$70\/h"/,
    );
  });

  it("may be written by sign or by code", () => {
    const text = exampleText("ninemoss").replace('price: "€15,000"', 'price: "EUR 15,000"');
    expect(readStudyText(text, "lake.yaml").money.currency).toBe("EUR");
  });
});
