import { describe, expect, it } from "vitest";
import { capitalised, printedWidth, uncapitalised, wrapped } from "../../../src/report/words/format.js";

describe("a name beside a picture", () => {
  const most = 48;
  it.each([
    "W".repeat(140),
    "取水口".repeat(30),
    "مأخذ المياه الخام للمدينة على الضفة الشرقية من البحيرة الكبيرة",
    "An intake with many ordinary words that goes on until nobody reads it any more",
  ])("is whole, in lines for which there is room: %s", (name) => {
    const lines = wrapped(name, most, printedWidth);
    expect(lines.join("").replaceAll(" ", "")).toBe(name.replaceAll(" ", ""));
    for (const line of lines) {
      const width = [...line].reduce((sum, letter) => sum + printedWidth(letter), 0);
      expect(width).toBeLessThanOrEqual(most);
    }
  });
});

describe("the first letter", () => {
  it("of a symbol stays small at the start of a sentence, that of a word grows", () => {
    expect([capitalised("pH (6.9)"), capitalised("calcium")]).toEqual(["pH (6.9)", "Calcium"]);
  });

  it("of a sentence shrinks inside another, that of an abbreviation or a name in capitals stays", () => {
    expect(uncapitalised("Rate chosen by the trust")).toBe("rate chosen by the trust");
    expect(uncapitalised("OMB circular")).toBe("OMB circular");
  });
});
