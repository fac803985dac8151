import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readStudyFile, readStudyText } from "../../src/study/reading/read.js";
import { absent, editedText, inputErrorOf, modelOf, problemsIn, toldIn } from "./example.js";
import { csvOf, datesFrom, monthsFrom } from "./records.js";

const feet = "date,elevation (ft)";
/** Within the limits of the example, 2,080 ft to 2,140 ft. */
const csv = csvOf(datesFrom("2010-11-01", "2012-12-31"), () => '"2,100"', feet);
/** 2,100 ft of 0.3048 m. */
const level = 640.08;
const origin = "invented gauge";

const withRecord = (record: unknown) =>
  [
    ["lake.drawdown", absent],
    ["lake.record", record],
  ] as const;

describe("a study with a record of levels", () => {
  it("gives the model each complete year, and no points", () => {
    const document = readStudyText(editedText(withRecord({ csv, origin })), "study.yaml");
    const { lake } = modelOf(document);
    expect(lake.drawdown).toEqual([]);
    expect(lake.record?.map(({ label }) => label)).toEqual(["2011", "2012"]);
    for (const { daily } of lake.record ?? []) {
      expect(daily).toEqual(Array(365).fill(expect.closeTo(level, 9)));
    }
  });

  it("tells a report what was left out and joined", () => {
    const gapped = csv.replace(/^2011-07-0[1-3].*\n/gm, "");
    const text = editedText(withRecord({ csv: gapped, origin, fillGapsUpTo: 3 }));
    const { lake } = readStudyText(text, "study.yaml");
    expect(lake.record?.levels).toMatchObject({
      form: "daily",
      leftOut: ["2010 (from 1 Nov)"],
      filled: [{ label: "2011", days: 3 }],
    });
  });

  it("may be JSON, with line ends of Windows", () => {
    const record = JSON.stringify({ csv: csv.replaceAll("\n", "\r\n"), origin });
    const text = editedText(withRecord({ csv: "", origin }));
    const written = text.replace(/^ {2}record:\n(?: {4}.*\n)+/m, `  record: ${record}\n`);
    expect(modelOf(readStudyText(written, "study.yaml")).lake.record).toHaveLength(2);
  });

  it.each([
    [
      "csv",
      { csv: csv.replace('2010-11-02,"2,100"', "2010-11-02,ice"), origin },
      ", line 3",
      '"ice"',
      "number",
    ],
    ["csv", { csv: "", origin }, "", "nothing", "CSV text that begins"],
    ["csv", { origin }, "", "nothing", "CSV text"],
    ["csv", { csv: 5, origin }, "", "5", "a text"],
    ["csv", { csv: " ".repeat(1024 * 1024 + 1), origin }, "", '"  ', "at most 1048576 characters"],
    ["origin", { csv }, "", "nothing", "a text"],
    ["fillGapsUpTo", { csv, origin, fillGapsUpTo: 1.5 }, "", "1.5", "a whole number of days"],
    ["fillGapsUpTo", { csv, origin, fillGapsUpTo: -1 }, "", "-1", "at least 0 days"],
    ["fillGapsUpTo", { csv, origin, fillGapsUpTo: 93 }, "", "93", "at most 92 days"],
  ])("is refused for a wrong %s: %#", (key, record, line, found, allowed) => {
    expect(problemsIn(editedText(withRecord(record)))).toEqual([
      {
        path: `lake.record.${key}${line}`,
        found: expect.stringContaining(found),
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringMatching(/^[A-Z].*\.$/),
      },
    ]);
  });

  it("is refused for a drawdown beside it", () => {
    expect(problemsIn(editedText([["lake.record", { csv, origin }]]))).toMatchObject([
      { path: "lake.record", found: "a record beside a drawdown", allowed: "drawdown or record, not both" },
    ]);
  });

  it("is refused without drawdown and record", () => {
    expect(problemsIn(editedText([["lake.drawdown", absent]]))).toMatchObject([
      {
        path: "lake.drawdown",
        found: "nothing",
        allowed: expect.stringContaining("record"),
        remedy: "Add it.",
      },
    ]);
  });

  it("is refused as uploaded text if it names a file", () => {
    expect(problemsIn(editedText(withRecord({ file: "levels.csv", origin })))).toMatchObject([
      { path: "lake.record.file", found: '"levels.csv"', remedy: expect.stringContaining("under csv") },
    ]);
  });

  it("of thirty years of days fits in one file, one of a hundred years in one record", () => {
    const years = (first: number, last: number) =>
      csvOf(datesFrom(`${first}-01-01`, `${last}-12-31`), () => '"2,100.25"', feet);
    const schedules = [1, 2, 3].map((number) => ({
      id: `schedule-${number}`,
      name: `Other ${number}`,
      record: { csv: years(1991, 2020), origin },
    }));
    const edits = [
      ...withRecord({ csv: years(1921, 2020), origin }),
      ["lake.otherSchedules", schedules],
    ] as const;
    const { lake } = modelOf(readStudyText(editedText(edits), "study.yaml"));
    expect(lake.record).toHaveLength(100);
    expect(lake.otherSchedules.map(({ record }) => record?.length)).toEqual([30, 30, 30]);
  });
});

describe("a record in a file beside the study", () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "level-record-"));
    writeFileSync(join(folder, "levels.csv"), `\uFEFF${csv}`);
    writeFileSync(join(folder, "Pegelstände 2011.CSV"), csv);
    writeFileSync(join(folder, "bad.csv"), csv.replace('2010-11-02,"2,100"', "2010-11-02,ice"));
    writeFileSync(join(folder, "large.csv"), " ".repeat(1024 * 1024 + 1));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const readWith = (edits: Parameters<typeof editedText>[0]) => {
    const path = join(folder, "study.yaml");
    writeFileSync(path, editedText(edits));
    return readStudyFile(path);
  };

  it.each(["levels.csv", "Pegelstände 2011.CSV"])("%s is read", (file) => {
    const { lake } = modelOf(readWith(withRecord({ file, origin })));
    expect(lake.record?.map(({ label }) => label)).toEqual(["2011", "2012"]);
  });

  it("is read for another schedule as well", () => {
    const schedule = { id: "dry-year", name: "Dry year", record: { file: "levels.csv", origin } };
    const { lake } = modelOf(readWith([["lake.otherSchedules", [schedule]]]));
    expect(lake.otherSchedules[0]?.record).toHaveLength(2);
  });

  it.each([
    ["bad.csv", "lake.record.file, line 3", '"ice"', "a number"],
    ["missing.csv", "lake.record.file", 'no file "missing.csv"', "in the folder of the study file"],
    ["large.csv", "lake.record.file", '"large.csv" of 1.0 MB', "at most 1.0 MB"],
    ["../levels.csv", "lake.record.file", '"../levels.csv"', "beside the study file"],
    ["/etc/levels.csv", "lake.record.file", '"/etc/levels.csv"', "beside the study file"],
    ["..\\levels.csv", "lake.record.file", "levels.csv", "beside the study file"],
    ["study.yaml", "lake.record.file", '"study.yaml"', "the name of a CSV file"],
    [".csv", "lake.record.file", '".csv"', "the name of a CSV file"],
    ["bad\0.csv", "lake.record.file", "bad", "the name of a CSV file"],
  ])("%s is refused", (file, path, found, allowed) => {
    expect(toldIn(inputErrorOf(() => readWith(withRecord({ file, origin }))))).toEqual([
      {
        path,
        found: expect.stringContaining(found),
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringMatching(/^[A-Z].*\.$/),
      },
    ]);
  });

  it("is refused beside csv", () => {
    const { problems } = inputErrorOf(() => readWith(withRecord({ file: "levels.csv", csv, origin })));
    expect(problems).toMatchObject([
      { path: "lake.record.file", found: '"levels.csv" beside csv', allowed: "csv or file, not both" },
    ]);
  });

  it("is told under the place of its schedule", () => {
    const schedule = { id: "dry-year", name: "Dry year", record: { file: "bad.csv", origin } };
    const { problems } = inputErrorOf(() => readWith([["lake.otherSchedules", [schedule]]]));
    expect(problems).toMatchObject([{ path: 'lake.otherSchedules[0 "dry-year"].record.file, line 3' }]);
  });
});

describe("a record of monthly means in a study", () => {
  it("gives the model one year of days for each of its years", () => {
    const monthly = csvOf(monthsFrom(2001, 2003), () => '"2,100"', feet);
    const { lake } = modelOf(readStudyText(editedText(withRecord({ csv: monthly, origin })), "study.yaml"));
    expect(lake.record?.map(({ daily }) => daily.length)).toEqual([365, 365, 365]);
  });
});
