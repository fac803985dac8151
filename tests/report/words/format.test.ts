import { describe, expect, it } from "vitest";
import { formatter, percent, ratio } from "../../../src/report/words/format.js";

describe("figures for reading", () => {
  const { money, exactMoney, quantity, rate } = formatter("USD", "us");

  // The rule of the report: three significant figures from a thousand up, whole units below.
  it("rounds money to three significant figures from a thousand up", () => {
    expect(money(1_234_567)).toBe("$1,230,000");
    expect(money(1_499)).toBe("$1,500");
    expect(money(-98_765)).toBe("−$98,800");
  });

  it("keeps small amounts whole and says so when there is less than one unit", () => {
    expect(money(123.4)).toBe("$123");
    expect(money(0.2)).toBe("under $1");
    expect(money(0)).toBe("$0");
  });

  it("gives appendix amounts to the unit and small unit rates to four decimals", () => {
    expect(exactMoney(1_234_567.89)).toBe("$1,234,568");
    expect(rate(0.0635)).toBe("$0.0635");
    expect(rate(12.5)).toBe("$12.50");
  });

  // 1 ft = 0.3048 m exactly; 1 m³/s = 35.3147 ft³/s (from the exact foot).
  it("prints quantities in the reader's units", () => {
    expect(quantity(0.3048, "length")).toBe("1 ft");
    expect(quantity(1, "flow")).toBe("35.31 cfs");
    expect(formatter("EUR", "si").quantity(1, "flow")).toBe("1 m³/s");
  });

  it("never rounds a chance to certainty or to nothing", () => {
    expect(percent(0.9999)).toBe("over 99%");
    expect(percent(0.000025)).toBe("0.0025%");
    expect(percent(1)).toBe("100%");
    expect(ratio(0.0001)).toBe("under 0.01");
    expect(ratio(1.204)).toBe("1.20");
  });
});
