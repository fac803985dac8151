import { describe, expect, it } from "vitest";
import { reportView } from "../../src/report/document/report-view.js";
import { resultsJson } from "../../src/report/results/results.js";
import { absent } from "../study/example.js";
import { amount, type Edit, smallRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const run = exampleRun("sorrel-bend");
const { moneyDetails, appendix, money: line } = reportView(run);
const detailsOf = (...edits: readonly Edit[]) => reportView(smallRun(edits)).moneyDetails;

describe("how the report says that money is counted", () => {
  it("tells the discount rate step by step where it follows from the federal rule", () => {
    const [rate] = moneyDetails.notes;
    expect(rate).toContain("Discount rate: 3% a year, by the federal rule for water planning");
    expect(rate).toContain("4.5%, is 4.5% to the nearest eighth");
    expect(rate).toContain("the rate of the year before was 2.75%. It may rise by a quarter point at most");
    expect(line).toContain("at a real rate of 3% a year (by the federal rule for water planning)");
    // Bureau of Reclamation, 89 FR 100533.
    expect(rate).toContain("The notice for fiscal year 2025 (89 FR 100533) has 3%.");
  });

  it("tells which index the prices of works follow", () => {
    const worksNote = (...edits: readonly Edit[]) =>
      detailsOf(...edits).notes.find((note) => note.includes("Prices of works"));
    expect(worksNote()).toContain("Prices of works follow another index: Construction of plants");
    expect(worksNote()).toContain("and consumer prices after 2023 [cepci-reproduced].");
    const values = [
      { year: 2014, value: 300 },
      { year: 2025, value: 420 },
    ];
    expect(worksNote(["money.worksIndex", { name: "Trends", origin: "an agency", values }])).toContain(
      "Prices of works follow the study's own index: Trends (an agency).",
    );
  });

  it("says where a rate is computed by the rule for want of a notice", () => {
    const noteFor = (year: { readonly fiscalYear?: number }, previousRate = "2.75 %/yr") =>
      detailsOf(
        [
          "money.discountRate",
          { planningRate: { meanYield: "4.5 %/yr", previousRate, origin: "invented", ...year } },
        ],
        ["money.discountRateOrigin", absent],
      ).notes[0];
    expect(noteFor({ fiscalYear: 2027 })).toContain(
      "No notice for fiscal year 2027 is known here: the rate is as computed by the quarter-point rule.",
    );
    expect(noteFor({ fiscalYear: 2022 }, "2.5 %/yr")).toContain(
      "The notice for fiscal year 2022 (87 FR 6199, seen without its rate) has, from memory, 2.25%.",
    );
    expect(noteFor({})).toContain("The study names no fiscal year");
  });

  it("tells the origin of a rate that is entered, the timing and how equipment is spread", () => {
    const notes = detailsOf(
      ["money.discountRateOrigin", "our treasurer"],
      ["money.timing", "end-of-year"],
    ).notes;
    expect(notes[0]).toBe("Discount rate: 3% a year above inflation. Origin: our treasurer.");
    expect(notes[1]).toContain("at the end of its year; the present is the start of 2027");
    expect(notes.at(-1)).toContain("by capital recovery, interest at the discount rate included");
  });

  it("tells that the index's value of 2025 lacks a month, unless the study has its own", () => {
    const prices = (notes: readonly string[]) =>
      notes.find((note) => note.startsWith("Prices of the assumptions"));
    expect(prices(moneyDetails.notes)).toContain("eleven months: October was not collected");
    const own = [{ year: 2025, value: 322, origin: "our own mean" }];
    const told = prices(detailsOf(["money.indexValues", own]).notes);
    expect(told).toContain("322 for 2025 is the study's own (our own mean)");
    expect(told).not.toContain("October");
  });

  it("tells of another currency that prices are turned in US dollars first, at a rate of its year", () => {
    const { notes } = reportView(exampleRun("ninemoss")).moneyDetails;
    expect(notes.join(" ")).toContain("into 2025 in US dollars");
    expect(notes.join(" ")).toContain("exchanged at 0.9 EUR for one US dollar (rate of 2025, invented)");
  });
});

describe("the table of prices that rise", () => {
  it("shows what 1 becomes in the first and in the last year", () => {
    // 0.8 % a year: mid-2025 to mid-2027 is two years, to mid-2056 31 years.
    const cells = moneyDetails.escalation?.rows[0]?.cells.map(({ text }) => text) ?? [];
    expect(cells).toEqual([
      "Energy lost, used or gained",
      "0.8%",
      (1.008 ** 2).toFixed(3),
      (1.008 ** 31).toFixed(3),
      "invented",
    ]);
  });

  it("is absent where no price rises otherwise", () => {
    expect(detailsOf().escalation).toBeUndefined();
  });
});

describe("the table of flows", () => {
  it("ends in one present value, in constant prices and in money of the years, that of the comparison", () => {
    const { total, rows } = moneyDetails.flows;
    const [, without, withoutNominal, withIt, withNominal] = total?.cells.map(({ text }) => text) ?? [];
    expect(withoutNominal).toBe(without);
    expect(withNominal).toBe(withIt);
    expect(amount(without)).toBeCloseTo(run.comparison.baseline.presentValue.total.toNumber(), -1);
    // 2 % a year from mid-2025 to mid-2027.
    const [, constant, nominal] = rows[0]?.cells.map(({ text }) => text) ?? [];
    expect(amount(nominal) / amount(constant)).toBeCloseTo(1.0404, 3);
  });
});

describe("the table of equipment in two ways", () => {
  it("adds up, for each option that has equipment", () => {
    const rows = moneyDetails.equipment?.rows ?? [];
    expect(rows).toHaveLength(run.document.options.filter(({ equipment }) => equipment.length > 0).length);
    for (const { cells } of rows) {
      const [purchases = 0, residual = 0, cash = 0, recovery = 0, difference = 0] = cells
        .slice(1)
        .map(({ text }) => amount(text));
      expect(Math.abs(purchases + residual - cash)).toBeLessThanOrEqual(1);
      expect(Math.abs(recovery - cash - difference)).toBeLessThanOrEqual(1);
    }
  });
});

describe("appendices under rising prices", () => {
  it("still add up to the expected present value, by line and by year", () => {
    const value = run.comparison.baseline.presentValue.infestation.toNumber();
    for (const { rows, total } of [appendix.lines, appendix.byYear]) {
      expect(amount(total?.cells.findLast(({ text }) => text !== "")?.text)).toBeCloseTo(value, -1);
      const ofRows = rows
        .filter(({ cells }) => cells[0]?.text !== "Sum" && cells.length > 1)
        .map(({ cells }) => amount(cells.at(rows === appendix.lines.rows ? 5 : -1)?.text));
      // Each of the rows is rounded to the unit.
      expect(Math.abs(ofRows.reduce((sum, each) => sum + each, 0) - value)).toBeLessThan(rows.length);
    }
  });

  it("show a price as its source has it and as it is used", () => {
    const cells = appendix.assumptions.rows.find(({ cells: [name] }) =>
      name?.text.includes("tipping"),
    )?.cells;
    // 0.0635 x 321.943/304.702 = 0.06709.
    expect(cells?.[1]?.text).toBe("0.0635 (0.0476–0.0931) USD/kg of 2023 → 0.06709 USD/kg of 2025 (× 1.057)");
  });
});

describe("the results as JSON", () => {
  it("hold what the report tells of money", () => {
    expect(resultsJson(run)).toMatchObject({
      money: {
        discountRate: 0.03,
        planningRate: { meanYield: 0.045, previousRate: 0.0275, limited: "rise" },
        priceIndex: "cpi-u",
        escalation: [
          { group: "energy", rate: 0.008 },
          { group: "wages", rate: 0.005 },
        ],
      },
      cashFlows: run.document.options.map(({ id }) => ({ option: id })),
    });
  });
});
