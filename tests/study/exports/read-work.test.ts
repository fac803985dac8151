import { describe, expect, it } from "vitest";
import { rangeAround } from "../../../src/editor/files/measured-range.js";
import { workEdits } from "../../../src/editor/files/work-edits.js";
import { readWork } from "../../../src/study/exports/orders/read-work.js";
import { workOrdersSchema } from "../../../src/study/format/export-schema.js";
import { assumptions } from "../../report/runs.js";

const structures = ["city-intake", "powerhouse"];
const mapping = {
  ...{ date: "Closed", structure: "Asset", work: "Type", order: "No", hours: "Hours", laborCost: "Labor" },
  ...{ outage: "Down (h)", energy: "Lost (MWh)" },
  structures: { CWI: "city-intake", "Unit 1": "powerhouse", Shop: "other" },
  works: { Basket: "strainer", Rack: "debris", Stop: "unit" },
};
const head = "No;Closed;Asset;Type;Crew;Hours;Labor;Down (h);Lost (MWh)";
const read = (lines: readonly string[], more: object = {}) =>
  readWork(`${head}\n${lines.join("\n")}\n`, workOrdersSchema.parse({ ...mapping, ...more }), structures);
const lines = [
  "1;2024-03-02;CWI;Basket;J. Doe;2;120;1.5;",
  "2;2025-03-02;CWI;Basket;R. Roe;3;$210.00;2.5;",
  "2;2025-03-03;CWI;Basket;J. Doe;1;70;;",
  "3;2025-04-03;CWI;Rack;J. Doe;9;;;",
  "4;2025-05-03;Unit 1;Stop;J. Doe;;;36;12.5",
  "5;2025-05-03;Shop;Basket;J. Doe;99;99;99;",
];

describe("a file of work orders and outages", () => {
  it("is summed by structure and kind of work; lines of one number are one order", () => {
    const { sums, told, refused } = read(lines);
    expect(refused).toEqual([]);
    expect(told).toEqual(["6 lines read.", "Dropped and not kept: Crew."]);
    expect([sums?.from, sums?.to, sums?.orders]).toEqual([2024, 2025, 5]);
    expect(sums?.sums[0]).toEqual({
      ...{ structure: "city-intake", work: "strainer", title: "Cleaning a strainer", orders: 2 },
      amounts: { hours: 6, laborCost: 400, parts: 0, outage: 4, energy: 0 },
    });
    expect(sums?.amounts.energy).toBeCloseTo(12_500, 6);
    expect(JSON.stringify(sums)).not.toMatch(/Doe|Roe/);
  });

  it("says what an hour and a cleaning take, of the study's structures alone", () => {
    // By hand, linear between orders: a tenth and nine tenths of the way from 60 to 70 $/h are 61 and 69.
    const near = (halfSpan: number): unknown => expect.closeTo(halfSpan, 9);
    expect(read(lines).sums?.values).toEqual([
      { id: "labour.maintenance-rate", mean: 400 / 6, smallest: 60, halfSpan: near(4), orders: 2 },
      { id: "raw-water.strainer-hours", mean: 3, smallest: 2, halfSpan: near(0.8), orders: 2 },
      { id: "raw-water.strainer-outage", mean: 2, smallest: 1.5, halfSpan: near(0.4), orders: 2 },
      { id: "hydropower.outage-days", mean: 36, smallest: 36, halfSpan: 0, orders: 1 },
    ]);
  });

  it("spans eight in ten orders as far below their middle as above it", () => {
    // numpy.percentile([1, 2, 3, 4, 5, 6], [10, 90]) is [1.5, 5.5].
    const six = [1, 2, 3, 4, 5, 6].map((hours) => `${hours};2024-03-02;CWI;Basket;;${hours};;;`);
    const [hours] = read(six).sums?.values ?? [];
    expect(hours).toMatchObject({ mean: 3.5, smallest: 1, orders: 6 });
    expect(hours?.halfSpan).toBeCloseTo(2, 9);
  });

  it("becomes own values with their counts, and says what no order can tell", () => {
    const { sums } = read(lines);
    if (!sums) throw new Error("nothing was read");
    const work = {
      sums,
      mapping: workOrdersSchema.parse(mapping),
      fileName: "orders.csv",
      origin: undefined,
    };
    const { edits, told } = workEdits({ money: { currency: "CAD" } }, work, assumptions);
    // By hand: orders so few would let each reach farther, so it reaches as far down as the usual low does:
    // 66.7 (1 − 45/64), 3 (1 − 1/3), 2 (1 − 0.5/1), 1.5 (1 − 1/3).
    expect(edits.slice(0, 4)).toEqual(
      [
        ["labour.maintenance-rate", "66.7 ± 19.8 CAD/h", "2 orders", "; as paid then"],
        ["raw-water.strainer-hours", "3 ± 2 h", "2 orders", ""],
        ["raw-water.strainer-outage", "2 ± 1 h", "2 orders", ""],
        ["hydropower.outage-days", "1.5 ± 1 d", "1 order", ""],
      ].map(([id, value, orders, more], index) => ({
        at: ["overrides", index],
        value: {
          ...{ id, value },
          reason: `Operator record: ${orders} of 2024 to 2025 in orders.csv; ± from what eight in ten orders span and the usual range${more}`,
        },
      })),
    );
    expect(told.join(" ")).toContain("Shown, but changing nothing: 1 order for debris or another outage.");
    expect(told.at(-1)).toContain("They cannot show how often mussels will call for work");
  });

  it("has one order taken for no certainty, and orders for more than the usual the more of them there are", () => {
    // By hand, of 3 h with 1 to 8: usual half 3.5; one order ± 2, down to the usual low, 1; of 101 orders alike,
    // √(3.5² / 101) = 0.348; of 101 that span ± 1, √((100 + 3.5²) / 101) = 1.05.
    const usual = { low: 1, value: 3, high: 8 };
    const order = { id: "raw-water.strainer-hours", mean: 3, smallest: 3, halfSpan: 0, orders: 1 };
    expect(rangeAround(order, usual)).toBe(2);
    expect(rangeAround({ ...order, orders: 101 }, usual)).toBeCloseTo(0.348, 3);
    expect(rangeAround({ ...order, halfSpan: 1, orders: 101 }, usual)).toBeCloseTo(1.054, 3);
  });

  it("reads amounts with a sign of money and either decimal sign, and a unit as the file writes it", () => {
    const comma = read(["1;2024-03-02;CWI;Basket;;2,5;$210,50;;"]);
    expect([comma.asked, comma.sums?.amounts.laborCost]).toEqual([[], 210.5]);
    const open = read(["1;2024-03-02;CWI;Basket;;2;$1,250;;"]);
    expect(open.asked[0]?.problem.found).toBe('"1,250", which may be 1.250 or 1250');
    const lower = read(["1;2024-03-02;CWI;Basket;;2;9;;1.5"], { energy: "lost (mwh)" });
    expect(lower.sums?.amounts.energy).toBeCloseTo(1500, 6);
  });

  it("asks for structures and kinds of work that nobody has mapped, and for a unit", () => {
    const { asked } = read(["1;2024-03-02;Pump 9;Paint;J. Doe;2;120;;"], { energy: "Crew" });
    expect(asked.map(({ about, words }) => [about, words])).toEqual([
      ["unit", undefined],
      ["structures", ["Pump 9"]],
      ["works", ["Paint"]],
    ]);
    expect(asked[0]?.problem.found).toBe('"Crew", no unit of energy');
  });

  it("counts words that are not mapped as no structure of the study where its author says so", () => {
    const pump = ["7;2024-03-02;Pump 9;Basket;;2;120;;"];
    const { asked, sums } = read([...lines, ...pump], { unmapped: "other" });
    expect([asked, sums?.orders]).toEqual([[], 6]);
    expect(sums?.values).toEqual(read(lines).sums?.values);
    const slip = { unmapped: "other", structures: { ...mapping.structures, "Pump 9": "power-house" } };
    expect(read([...lines, ...pump], slip).asked[0]?.words).toEqual(["Pump 9"]);
  });

  it("tells of words beyond those that it offers that there are more", () => {
    const pumps = Array.from({ length: 50 }, (_, index) => `${index};2024-03-02;Pump ${index};Basket;;2;;;`);
    const [asked] = read(pumps).asked;
    expect(asked?.words).toHaveLength(40);
    expect(asked?.problem.found).toMatch(/“Pump 7” in 1 line; at least 32 more$/);
  });

  it.each([
    ["1;2024-02-30;CWI;Basket;;2;120;;", 'date "2024-02-30"', "a day that the month has"],
    ["1;2024-02-20;CWI;Basket;;-2;120;;", 'hours of work "-2"', "hours from 0 to 100,000, or nothing"],
    ["1;2024-02-20;CWI;Basket;;2;-9;;", 'labor cost "-9"', "an amount of 0 or more, or nothing"],
    ["1;2024-02-20;CWI;Basket;;2;;9000;", 'hours out of service "9000"', "hours from 0 to 8,784 (a year)"],
    ["1;2024-02-20;CWI;Basket;;2;;;lots", 'energy lost "lots"', "an energy of 0 or more, or nothing"],
    ["1;2024-02-20;;Basket;;2;;;", "structure nothing", "a word for a structure"],
    ["1;2024-02-20;CWI;;;2;;;", "work nothing", "a word for a kind of work"],
  ])("refuses %s by line, found, allowed and remedy, and counts the others", (line, found, allowed) => {
    const { refused, sums } = read([...lines, line]);
    expect(refused).toEqual([
      {
        line: 8,
        found,
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringContaining("Correct"),
      },
    ]);
    expect(sums?.orders).toBe(5);
  });

  it("reads 200,000 lines within 5 s of processor time", () => {
    const many = Array.from(
      { length: 200_000 },
      (_, index) =>
        `${index};${2010 + (index % 15)}-0${1 + (index % 9)}-11;CWI;Basket;J. Doe;2.5;177.5;1;0.5`,
    );
    const before = process.cpuUsage();
    const { sums } = read(many);
    const { user, system } = process.cpuUsage(before);
    expect(sums?.orders).toBe(200_000);
    expect((user + system) / 1e6).toBeLessThan(5);
  });
});
