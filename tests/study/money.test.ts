import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { prepareStudy } from "../../src/study/prepare/prepared.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { realSet } from "../assumptions/real.js";
import { absent, editedText, inputErrorOf, toldIn, wordsOfTheProgram } from "./example.js";

const set = realSet();
const folder = fileURLToPath(new URL("../bad/money", import.meta.url));

/** The example with fields of its money replaced; null takes one away. */
function preparedWith(fields: Readonly<Record<string, unknown>>) {
  const edits = Object.entries(fields).map(
    ([field, value]) => [`money.${field}`, value === null ? absent : value] as const,
  );
  return prepareStudy(readStudyText(editedText(edits), "study.yaml"), set);
}

/** Each file of fields that cannot be used, with the place, what was found, what is allowed and what to do. */
const badFiles = [
  [
    "price-year-beyond-index",
    "money.priceYear",
    "2027",
    "cpi-u holds: 1980 to 2025",
    "money.indexValues with its source",
  ],
  ["index-value-on-another-base", "money.indexValues[0].value", "1.03", "321.943 for 2025", "Correct"],
  [
    "works-index-lacks-years",
    "money.worksIndex.values",
    "no value for 2014",
    "price year, 2025, and those of the assumptions' works",
    "leave the index out",
  ],
  ["works-index-year-twice", "money.worksIndex.values", "2025 a second time", "each year once", "Keep one"],
  ["index-year-twice", "money.indexValues[1].year", "2026 a second time", "each year once", "Keep one"],
  ["index-value-without-origin", "money.indexValues[0].origin", "nothing", "a text", "Add it"],
  ["index-value-zero", "money.indexValues[0].value", "0", "at least 0.01", "Correct"],
  [
    "unknown-treatment-of-prices",
    "money.pricesOfAssumptions",
    '"inflated"',
    "converted, as-they-stand",
    "Correct",
  ],
  ["unknown-group", "money.escalation[0].group", '"steel"', "energy, water, labour", "Correct"],
  ["group-twice", "money.escalation[1].group", "energy a second time", "each group once", "Keep one"],
  [
    "rise-of-minus-100-percent",
    "money.escalation[0].rate",
    "-100 %/yr",
    "from -20 to 20 % a year",
    "Correct",
  ],
  ["rise-without-origin", "money.escalation[0].origin", "nothing", "a text", "Add it"],
  ["rise-of-50-percent", "money.escalation[0].rate", "50 %/yr", "from -20 to 20 % a year", "Correct"],
  ["absurd-inflation", "money.inflation", "60 %/yr", "at most 30 % a year", "Correct"],
  ["negative-inflation", "money.inflation", "-3 %/yr", "at least 0", "Correct"],
  [
    "previous-rate-no-eighths",
    "money.discountRate.planningRate.previousRate",
    "5.6 %/yr",
    "eighths",
    "Correct",
  ],
  [
    "yield-with-range",
    "money.discountRate.planningRate.meanYield",
    "4 to 5 %/yr",
    "without a range",
    "Correct",
  ],
  [
    "rate-against-its-notice",
    "money.discountRate.planningRate.meanYield",
    "a rate of 2.875 % for fiscal year 2025",
    "3 %, as published (89 FR 100533)",
    "leave out fiscalYear",
  ],
  [
    "rate-before-against-its-notice",
    "money.discountRate.planningRate.previousRate",
    "a rate of 2.875 % for fiscal year 2020",
    "2.75 %, as published (84 FR 68943)",
    "leave out fiscalYear",
  ],
  ["planned-rate-without-origin", "money.discountRate.planningRate.origin", "nothing", "a text", "Add it"],
  [
    "two-origins-of-the-rate",
    "money.discountRateOrigin",
    '"notices"',
    "nothing beside a planningRate",
    "Remove it",
  ],
  ["rate-without-origin", "money.discountRateOrigin", "nothing", "where the rate comes from", "Add it"],
  ["exchange-rate-without-year", "money.exchangeRateYear", "nothing", "the year of which", "Add it"],
  [
    "exchange-rate-without-origin",
    "money.exchangeRateOrigin",
    "nothing",
    "where the exchange rate",
    "Add it",
  ],
] as const;

describe("money that cannot be used", () => {
  it.each(badFiles)(
    "%s is told by place, found, allowed and remedy",
    (name, path, found, allowed, remedy) => {
      const fields = parse(readFileSync(join(folder, `${name}.yaml`), "utf8")) as Record<string, unknown>;
      const error = inputErrorOf(() => preparedWith(fields));
      expect(toldIn(error)).toContainEqual({
        path,
        found: expect.stringContaining(found),
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringContaining(remedy),
      });
      expect(wordsOfTheProgram(error.message)).toBeUndefined();
    },
  );

  it("is tried with every file of the folder", () => {
    const tried = badFiles.map(([name]) => `${name}.yaml`);
    expect(readdirSync(folder).filter((file) => !tried.includes(file))).toEqual([]);
  });
});

describe("prices of the assumptions", () => {
  // 57.63 USD per short ton in 2023, as entered; CPI-U 304.702 (2023), 321.943 (2025), 229.594 (2012).
  const tipping = set.entries.get("disposal.tipping-fee")?.value ?? Number.NaN;
  const paidIn = (fields: Readonly<Record<string, unknown>>) =>
    preparedWith(fields).assumed("disposal.tipping-fee");

  it("are in prices of the study's year", () => {
    expect(paidIn({}) / tipping).toBeCloseTo(321.943 / 304.702, 12);
    expect(paidIn({ priceYear: 2012 }) / tipping).toBeCloseTo(229.594 / 304.702, 12);
    expect(paidIn({ priceYear: 2023 })).toBe(tipping);
  });

  it("are used as they stand where the study says so, whatever its year", () => {
    expect(paidIn({ pricesOfAssumptions: "as-they-stand", priceYear: 2026 })).toBe(tipping);
  });

  it("go by a value of the study for a year that the table lacks, or in place of the table's", () => {
    const value = (year: number, index: number) => ({
      priceYear: year,
      indexValues: [{ year, value: index, origin: "invented" }],
    });
    expect(paidIn(value(2026, 330)) / tipping).toBeCloseTo(330 / 304.702, 12);
    expect(paidIn(value(2025, 322)) / tipping).toBeCloseTo(322 / 304.702, 12);
  });

  it("are turned in US dollars first, and then exchanged", () => {
    const text = editedText([["money.priceYear", 2012]], "ninemoss");
    const { assumed } = prepareStudy(readStudyText(text, "study.yaml"), set);
    expect(assumed("disposal.tipping-fee") / tipping).toBeCloseTo((229.594 / 304.702) * 0.9, 12);
  });

  it("leave the study's own values and what is no price as they are", () => {
    const { assumed } = preparedWith({ priceYear: 2012 });
    // The example's override: a quote of $9,500 in the study's money.
    expect(assumed("cleaning.rack.visit")).toBe(9500);
    expect(assumed("cleaning.dry-share")).toBe(set.entries.get("cleaning.dry-share")?.value);
  });

  it("carry the cost of a plant of 2004 to 2012", () => {
    // Connelly and others 2007, 44,000 USD, if in prices of 2004 (the abstract gives no year), x 1.2155 = 53,483.
    const { prices } = preparedWith({ priceYear: 2012 });
    const price = { unit: "$", priceYear: 2004 } as const;
    expect(Math.abs(44_000 * prices.factorOf(price) - 53_483)).toBeLessThanOrEqual(25);
  });
});

describe("prices of works", () => {
  const capital = set.entries.get("plan.oxidant.capital");
  if (!capital) throw new Error("no price of works");
  const paidIn = (fields: Readonly<Record<string, unknown>>) => preparedWith(fields).prices.factorOf(capital);

  it("follow an index of construction, and consumer prices after its last year", () => {
    // Plant Cost Index 576.1 (2014) and 797.9 (2023), CPI-U 304.702 (2023) and 321.943 (2025): by hand 1.4634.
    expect(paidIn({ priceYear: 2023 })).toBeCloseTo(797.9 / 576.1, 12);
    expect(paidIn({ priceYear: 2025 })).toBeCloseTo(1.4634, 4);
    expect(paidIn({ priceYear: 2012 })).toBeCloseTo(584.6 / 576.1, 12);
    expect(paidIn({ pricesOfAssumptions: "as-they-stand" })).toBe(1);
  });

  it("follow the study's own index where it has one, on any base", () => {
    const values = [
      { year: 2014, value: 300 },
      { year: 2025, value: 420 },
    ];
    const own = preparedWith({ worksIndex: { name: "Trends", origin: "an agency", values } });
    expect(own.prices.factorOf(capital)).toBeCloseTo(1.4, 12);
    // Prices of work stay with consumer prices.
    expect(own.assumed("disposal.tipping-fee")).toBe(preparedWith({}).assumed("disposal.tipping-fee"));
  });
});

describe("the federal planning rate", () => {
  const rateOf = (meanYield: string, previousRate: string) =>
    preparedWith({
      discountRate: { planningRate: { meanYield, previousRate, origin: "notices" } },
      discountRateOrigin: null,
    }).input.money.discountRate;

  it.each([
    // Bureau of Reclamation, 69 FR 22556 and 69 FR 71425: fiscal years 2004 and 2005.
    ["4.893 %/yr", "5.875 %/yr", 0.05625],
    ["5.088 %/yr", "5.625 %/yr", 0.05375],
    // By the rule: within a quarter point the rounded yield stands.
    ["5.088 %/yr", "5.25 %/yr", 0.05125],
  ])("of a yield of %s after %s is %d", (meanYield, previousRate, rate) => {
    expect(rateOf(meanYield, previousRate)).toBe(rate);
  });

  it("is refused by no notice that is from memory, and by none of another year", () => {
    // 2022 has 2.25 % from memory, 2026 no notice.
    const rateFor = (fiscalYear: number, previousRate: string) =>
      preparedWith({
        discountRate: {
          planningRate: { meanYield: "4.9 %/yr", previousRate, origin: "invented", fiscalYear },
        },
        discountRateOrigin: null,
      }).input.money.discountRate;
    expect(rateFor(2022, "2.5 %/yr")).toBe(0.0275);
    expect(rateFor(2026, "3 %/yr")).toBe(0.0325);
  });
});
