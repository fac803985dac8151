import { describe, expect, it } from "vitest";
import { cleanYears } from "../../../src/study/exports/clean-years.js";
import { readSamples } from "../../../src/study/exports/read-samples.js";
import { sampleYearText } from "../../../src/study/exports/sample-years.js";
import { sampleLogSchema } from "../../../src/study/format/export-schema.js";
import { assumptions } from "../../report/runs.js";

const mapping = {
  ...{ date: "Taken", result: "Result", kind: "Gear", place: "Station" },
  kinds: { Net: "planktonTows", Plate: "settlementPlates", Dive: "searches", DNA: "ednaSamples" },
  results: { ND: "none", "Veligers seen": "mussels", "Not repeated": "unconfirmed" },
};
const read = (lines: readonly string[], more: object = {}) =>
  readSamples(
    `# invented\nTaken,Gear,Station,Taken by,Result\n${lines.join("\n")}\n`,
    sampleLogSchema.parse({ ...mapping, ...more }),
  );
const tows = (year: number, count: number, result = "ND") =>
  Array.from({ length: count }, (_, index) => `${year}-07-${10 + (index % 20)},Net,Dam,J. Doe,${result}`);

/** As `assumptions/detection.yaml` has it: 24 tows a year are a usual effort. */
const usual = assumptions.entries.get("detection.usual-tows")?.value ?? Number.NaN;
const document = { money: { startYear: 2026 } };

describe("a file of samples", () => {
  it("is counted by year and kind: each tow, each plate of a season, each day of a search", () => {
    const { years, told } = read([
      ...tows(2021, 3),
      ...["2021-06-01,Plate,Dam,J. Doe,ND", "2021-08-01,Plate,Dam,J. Doe,ND", "2021-08-01,Plate,Cove,,0"],
      ...["2021-08-02,Dive,Dam,R. Roe,ND", "2021-08-02,Dive,Dam,K. Poe,ND", "2021-08-03,DNA,Cove,,1.5"],
      "2022-08-03,DNA,Cove,,Not repeated",
    ]);
    const none = { planktonTows: 0, settlementPlates: 0, searches: 0 };
    expect(years).toEqual([
      {
        ...{ year: 2021, other: 0, places: 2, mussels: 1, unconfirmed: 0 },
        counts: { planktonTows: 3, settlementPlates: 2, searches: 1, ednaSamples: 1 },
      },
      {
        ...{ year: 2022, other: 0, places: 1, mussels: 0, unconfirmed: 1 },
        counts: { ...none, ednaSamples: 1 },
      },
    ]);
    expect(told).toEqual(["10 samples read.", "Dropped and not kept: Taken by."]);
  });

  it("without a column of places tells of none, and how plates and searches are counted then", () => {
    const { years, told } = read(["2021-06-01,Plate,Dam,,ND", "2021-06-01,Plate,Cove,,ND"], {
      place: undefined,
    });
    expect(years).toMatchObject([{ places: 0, counts: { settlementPlates: 1 } }]);
    expect(years.map(sampleYearText)).toEqual(["2021: 1 settlement plate; 0 with mussels, 0 unconfirmed."]);
    expect(told[1]).toBe("Without a column of places, plates count as one a year and searches as one a day.");
  });

  it("without a sample is refused, as no year follows from it", () => {
    expect(read([]).refused.map(({ line, found }) => [line, found])).toEqual([
      [2, "no sample below the column names"],
    ]);
  });

  it("asks for words without a meaning and for a kind that nothing tells", () => {
    const { asked } = read(["2021-06-01,Seine,Dam,,Clear"]);
    expect(asked.map(({ about, words }) => [about, words])).toEqual([
      ["kinds", ["Seine"]],
      ["results", ["Clear"]],
    ]);
    const without = readSamples("d,r\n2021-06-01,0\n", sampleLogSchema.parse({ date: "d", result: "r" }));
    expect(without.asked[0]?.problem.found).toBe("no column of kinds");
  });

  it.each([
    ["2021-02-30,Net,Dam,,ND", 'date "2021-02-30"', "a day that the month has"],
    ["2021-02-03,Net,Dam,,", "result nothing", "a count, or a word for a result"],
    ["2021-02-03,,Dam,,ND", "kind nothing", "a word for a kind of sample"],
  ])("refuses %s by line, found, allowed and remedy, and counts the others", (line, found, allowed) => {
    const { refused, years } = read([line, ...tows(2021, 2)]);
    expect(refused).toEqual([
      { line: 3, found, allowed, remedy: "Correct it in the file, or leave the line out." },
    ]);
    expect(years[0]?.counts.planktonTows).toBe(2);
  });
});

describe("clean years", () => {
  const of = (lines: readonly string[], study: object = document) =>
    cleanYears(read(lines).years, study, assumptions);

  it("are those with a usual effort before the study, one after the other in one period", () => {
    const { runs, told } = of([2019, 2020, 2022, 2026].flatMap((year) => tows(year, usual)));
    expect(runs).toEqual([
      { from: 2019, to: 2020 },
      { from: 2022, to: 2022 },
    ]);
    expect(told).toEqual([
      "3 clean years: 2019 to 2020, 2022.",
      "2026 is not added: it is not before the first year of the study.",
    ]);
  });

  it("are not those with fewer samples than the study takes as usual", () => {
    const lines = tows(2021, usual / 2);
    expect(of(lines).told).toEqual([
      `2021 is not added: its samples are worth 50 % of a usual effort, ${usual} plankton tows.`,
    ]);
    const own = {
      ...document,
      overrides: [{ id: "detection.usual-tows", value: usual / 2, reason: "ours" }],
    };
    expect(of(lines, own).runs).toEqual([{ from: 2021, to: 2021 }]);
  });

  it("are none where mussels were found in any year, or the lake is infested", () => {
    const lines = [...tows(2020, usual), ...tows(2021, 1, "Veligers seen")];
    expect(of(lines)).toMatchObject({
      runs: [],
      told: [expect.stringContaining("found in 2021 (1 sample)")],
    });
    expect(of(tows(2020, usual), { lake: { infestedSince: 2022 } }).runs).toEqual([]);
  });

  it.each([
    ["a year with keys that slipped", { from: 1e20, to: 1e20 }],
    ["no first year", { from: Number.NEGATIVE_INFINITY, to: 2019 }],
  ])("are found beside a period of %s in an unfinished study", (_what, period) => {
    const study = { ...document, boats: { cleanPeriods: [period] } };
    expect(of(tows(2020, usual), study).runs).toEqual([{ from: 2020, to: 2020 }]);
  });

  it("tell of an unconfirmed find in a year that the study has as clean", () => {
    const study = { ...document, boats: { cleanPeriods: [{ from: 2018, to: 2021 }] } };
    expect(of(tows(2021, 1, "Not repeated"), study).told).toEqual([
      "2021 is not added: it is in the study’s clean years already, though 1 find in it stayed unconfirmed.",
    ]);
  });

  it("are not a year with an unconfirmed find, nor one that the study has", () => {
    const lines = [...tows(2020, usual), ...tows(2021, usual), "2021-08-03,DNA,Cove,,Not repeated"];
    const study = { ...document, boats: { cleanPeriods: [{ from: 2018, to: 2020 }] } };
    const { runs, told } = of(lines, study);
    expect(runs).toEqual([]);
    expect(told).toEqual([
      "2020 is not added: it is in the study’s clean years already.",
      "2021 is not added: 1 find in it stayed unconfirmed.",
    ]);
  });
});
