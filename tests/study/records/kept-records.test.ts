import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { draftOf } from "../../../src/editor/draft.js";
import { readStudyFile, readStudyText } from "../../../src/study/reading/read.js";
import { recordsFor, recordsNamed, takeRecord } from "../../../src/study/records/at-hand.js";
import { keepBeside } from "../../../src/study/records/record-folder.js";
import { absent, editedText, inputErrorOf, modelOf, problemsIn } from "../example.js";
import { csvOf, datesFrom } from "../records.js";

const feet = "date,elevation (ft)";
const origin = "invented gauge";
/** Within the limits of the example; each test has levels of its own, so that none finds another's record. */
const record = (level: number) => csvOf(datesFrom("2011-01-01", "2012-12-31"), () => level, feet);
const withRecord = (kept: object) =>
  editedText([
    ["lake.drawdown", absent],
    ["lake.record", { origin, ...kept }],
  ]);

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});
function folder(): string {
  const made = mkdtempSync(join(tmpdir(), "records-"));
  folders.push(made);
  return made;
}

describe("a study that names its record by the digest", () => {
  it("is read as the one with the record in its text", () => {
    const csv = record(2100);
    const kept = readStudyText(withRecord({ kept: takeRecord(csv) }), "study.yaml");
    const whole = readStudyText(withRecord({ csv }), "study.yaml");
    expect(modelOf(kept)).toEqual(modelOf(whole));
    expect(kept.lake.record?.levels.years).toHaveLength(2);
  });

  it("has the digest that the tool sha256sum of GNU coreutils gives", () => {
    // printf 'date,elevation (ft)\n' | sha256sum
    expect(takeRecord(`${feet}\n`)).toBe("bb559f6590ab6e6c8635d95b8d1df687f2db117da54612ccfc09c1d13d9389e1");
  });

  it("is read from the folder beside its file, whatever line ends a version-control tool left", () => {
    const place = folder();
    const { digest, path } = keepBeside(place, record(2101));
    writeFileSync(path, readFileSync(path, "utf8").replaceAll("\n", "\r\n"));
    writeFileSync(join(place, "study.yaml"), withRecord({ kept: digest }));
    expect(readStudyFile(join(place, "study.yaml")).lake.record?.levels.years).toHaveLength(2);
  });

  it("is refused for a record that is not there, and the problem says what to do", () => {
    const [problem, ...others] = problemsIn(withRecord({ kept: "0".repeat(64) }));
    expect(problem).toMatchObject({
      path: "lake.record.kept",
      found: "the record 000000000000…, which is not kept here",
      remedy: expect.stringContaining("Read its file again"),
    });
    expect(others).toEqual([]);
  });

  it("is refused for a file that was altered", () => {
    const place = folder();
    const digest = "1".repeat(64);
    const { path } = keepBeside(place, record(2102));
    writeFileSync(join(place, "records", `${digest}.csv`), readFileSync(path));
    writeFileSync(join(place, "study.yaml"), withRecord({ kept: digest }));
    const error = inputErrorOf(() => readStudyFile(join(place, "study.yaml")));
    expect(error.problems).toMatchObject([
      { path: "lake.record.kept", found: `records/${digest}.csv, which was altered` },
    ]);
  });

  it("is refused for a record in its text as well, and for what is no digest", () => {
    const csv = record(2103);
    expect(problemsIn(withRecord({ kept: takeRecord(csv), csv }))).toMatchObject([
      { path: "lake.record.kept", found: "a kept record beside csv" },
    ]);
    expect(problemsIn(withRecord({ kept: "../../etc/passwd" }))).toMatchObject([
      { path: "lake.record.kept", allowed: "the digest of a kept record: 64 hexadecimal digits" },
    ]);
  });

  it("tells the faults of the record at its place, in an unfinished study too", () => {
    const broken = record(2104).replace("2011-01-03,2104", "2011-01-03,ice");
    const text = withRecord({ kept: takeRecord(broken) });
    expect(problemsIn(text).map(({ path }) => path)).toEqual(["lake.record.kept, line 4"]);
    const unfinished = text.replace(/^ {2}minimumElevation:.*\n/m, "");
    expect(draftOf(unfinished, "study.yaml").problems.map(({ path }) => path)).toContain(
      "lake.record.kept, line 4",
    );
  });

  it("is a short text in the editor, which reads the levels all the same", () => {
    const text = withRecord({ kept: takeRecord(record(2105)) });
    const { document, levels, problems } = draftOf(text, "study.yaml");
    expect(JSON.stringify(document)).not.toContain("2011-01-02");
    expect(levels?.years).toHaveLength(2);
    expect(problems).toEqual([]);
  });
});

describe("records that go with a text", () => {
  it("are those that it names in YAML or JSON, each once", () => {
    const digest = takeRecord(record(2106));
    const named = `record:\n  kept: ${digest}\n`;
    expect(recordsNamed(`${named}${named}{"kept": "${digest}"}{"kept":"${digest}"}`)).toEqual([digest]);
    for (const text of [
      `kept : ${digest}`,
      `'kept': '${digest}'`,
      `{ "kept" : "${digest}" }`,
      `kept:\n  ${digest}`,
    ])
      expect(recordsNamed(text)).toEqual([digest]);
    expect(recordsFor([named, "kept: no", named])).toEqual([record(2106)]);
  });
});
