import { describe, expect, it } from "vitest";
import { draftOf } from "../../src/editor/draft.js";
import { reportContext } from "../../src/report/document/context.js";
import { levelsPicture } from "../../src/report/rack/levels-picture.js";
import { levelFacts } from "../../src/report/rack/levels-view.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { drawnStudy } from "../../src/study/odds/draws.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { draftedLevels } from "../../src/study/reading/drafted-levels.js";
import { judged, readDraft } from "../../src/study/reading/judged.js";
import { readLevelRecord } from "../../src/study/reading/levels/level-record.js";
import { parseText, readStudyText } from "../../src/study/reading/read.js";
import { recordReaders } from "../../src/study/reading/record-readers.js";
import { readSeasonLog } from "../../src/study/reading/season-log.js";
import { readTrafficCounts } from "../../src/study/reading/traffic-counts.js";
import { assumptions } from "../report/runs.js";
import { anyDay, counted, csv as launches } from "./counted-traffic.js";
import { absent, editedText, exampleDocument, valueAt } from "./example.js";
import { csvOf, datesFrom } from "./records.js";

const origin = "invented";
const levels = csvOf(datesFrom("2001-01-01", "2020-12-31"), () => '"2,125"', "date,elevation (ft)");
const dryYear = csvOf(datesFrom("2012-01-01", "2012-12-31"), () => '"2,115"', "date,elevation (ft)");
const seasons = "season,class,screened,setAside,fouled\n2025,infested-30-days,100,80,5\n";
const tables = [levels, dryYear, seasons, launches];

type Edits = Parameters<typeof editedText>[0];

/** A study with all four kinds of table, whose ranges are judged at both of their ends. */
const text = (...edits: Edits) =>
  editedText([
    ["lake.drawdown", absent],
    ["lake.record", { csv: levels, origin }],
    ["lake.otherSchedules", [{ id: "dry", name: "Dry year", record: { csv: dryYear, origin } }]],
    ["boats.seasons", { csv: seasons, origin }],
    ["boats.traffic", counted],
    ["options[full-season].station", absent],
    ["boats.launches.jul", "1200 to 1400 to 1800"],
    ["boats.otherWays[0].chance", "0.1 to 0.2 to 0.4 %/yr"],
    ["structures[marina].wettedArea", "4,800 to 5,400 to 6,600 ft2"],
    ...anyDay,
    ...edits,
  ]);

const read = (...edits: Edits) => readStudyText(text(...edits), "study.yaml");

/** Readers of records that keep the texts which they had to read. */
function counting() {
  const texts: string[] = [];
  const keeping =
    <Settings, Reading>(reader: (csv: string, settings: Settings) => Reading) =>
    (csv: string, settings: Settings) => {
      texts.push(csv);
      return reader(csv, settings);
    };
  const readers = recordReaders({
    levels: keeping(readLevelRecord),
    seasons: keeping(readSeasonLog),
    counts: keeping(readTrafficCounts),
  });
  return { readers, texts };
}

/** The study with texts that no reader would take: whoever reads them again fails. */
function unreadable({ lake, boats, ...others }: StudyDocument): StudyDocument {
  const csv = "ice";
  const withoutText = <Levels extends Pick<StudyDocument["lake"], "record">>(levels: Levels) => ({
    ...levels,
    record: levels.record && { ...levels.record, csv },
  });
  return {
    ...others,
    lake: { ...withoutText(lake), otherSchedules: lake.otherSchedules.map(withoutText) },
    boats: {
      ...boats,
      seasons: boats.seasons && { ...boats.seasons, csv },
      traffic: boats.traffic && { ...boats.traffic, csv },
    },
  };
}

describe("the tables of a study", () => {
  it("have 7,305 lines of levels, the days of 20 years", () => {
    expect(levels.trim().split("\n")).toHaveLength(1 + 20 * 365 + 5);
  });

  it("are each read once, whatever is judged of them", () => {
    const { readers, texts } = counting();
    expect(judged(parseText(text(), "study.yaml"), readers).study?.lake.record?.levels.years).toHaveLength(
      20,
    );
    expect(texts.sort()).toEqual([...tables].sort());
  });

  it("are not read again for the comparison, for any of its options or for the report", () => {
    const options = valueAt(exampleDocument(), "options");
    if (!Array.isArray(options)) throw new Error("the example has options");
    const more = [1, 2, 3].map((number) => ({
      ...options[1],
      id: `copy-${number}`,
      name: `Copy ${number}`,
      open: anyDay[0][1],
    }));
    const edits: Edits = [
      ["options", [...options, ...more]],
      ["options[full-season].station", absent],
      ["structures", [valueAt(exampleDocument(), "structures[reservoir-wide]")]],
    ];
    const study = read(...edits, ...anyDay);
    const [run, other] = [study, unreadable(study)].map((each) => runStudy(each, assumptions));
    const benefits = [run, other].map((each) =>
      each?.comparison.options.map(({ netBenefit }) => netBenefit.toNumber()),
    );
    expect(benefits[1]).toHaveLength(options.length - 1 + more.length);
    expect(benefits[1]).toEqual(benefits[0]);
    expect(other && levelFacts(reportContext(other))[0]).toContain("20 years, 2001 to 2020");
  });

  it("are not read again for simulated outcomes, even where launches are drawn", () => {
    const study = read();
    const [drawn, other] = [study, unreadable(study)].map((each) =>
      drawnStudy(each, assumptions, { seed: 1, sampling: "latin-hypercube" }),
    );
    expect(other?.inputs.map(({ id }) => id)).toContain("boats/launches/jul");
    expect(other?.futures(1, 0).cost).toEqual(drawn?.futures(1, 0).cost);
  });

  it("are read once for a draft, with what is drawn of the lake's record", () => {
    const { readers, texts } = counting();
    const draft = readDraft(parseText(text(["money", absent]), "study.yaml"), readers);
    expect(draft.problems.map(({ path }) => path)).toEqual(["money"]);
    expect(draft.levels?.years).toHaveLength(20);
    expect(texts.sort()).toEqual([...tables].sort());
  });

  it("are drawn by the editor where the lake itself is not complete", () => {
    const draft = draftOf(text(["lake.storageTable", absent]), "study.yaml");
    const drafted = draftedLevels(draft);
    expect(drafted && levelsPicture(drafted, "us").note).toContain("2,125 ft");
  });

  it("are told of all at once where they are wrong, each read once", () => {
    const { readers, texts } = counting();
    const wrong = text(
      ["lake.record.csv", levels.replace('2001-01-02,"2,125"', "2001-01-02,ice")],
      ["lake.otherSchedules[0].record.csv", "date,elevation (ft)\n"],
      ["boats.seasons.csv", `${seasons}2026,infested-30-days,10,8,12\n`],
      ["boats.traffic", { ...counted, csv: launches.replace("2024-07-08,8", "2024-07-08,24") }],
    );
    const { problems } = judged(parseText(wrong, "study.yaml"), readers);
    expect(problems.map(({ path }) => path)).toEqual([
      "lake.record.csv, line 3",
      'lake.otherSchedules[0 "dry"].record.csv',
      "boats.seasons.csv, line 3",
      "boats.traffic.csv, line 3",
    ]);
    expect(texts).toHaveLength(tables.length);
  });
});
