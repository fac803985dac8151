import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/read.js";
import { staffStations } from "../../src/study/staffing.js";
import { type Contradicting, expectContradiction } from "./contradicting.js";
import { absent, editedText, exampleDocument, placeIn, problemsIn, put, valueAt } from "./example.js";

const station = "options[station].station";
const days = `${station}.dayTypes`;

const impossible: readonly Contradicting[] = [
  {
    why: "more days of all types than a year has",
    edits: [[`${days}[0].daysPerYear`, 300]],
    at: days,
    found: "517 days a year in all",
    allowed: "at most 365 days",
  },
  {
    why: "a day on which no boat comes",
    edits: [[`${days}[1].launchesByHour`, [0, 0, 0]]],
    found: "no launch in any open hour",
    allowed: "launches above 0",
  },
  {
    why: "two day types with one id",
    edits: [[`${days}[1].id`, "summer-weekend"]],
    found: '"summer-weekend" a second time',
    allowed: "an id used once",
  },
  {
    why: "a station of the option without steps",
    edits: [["options[none].station", valueAt(exampleDocument(), station)]],
    found: "a station of an option without steps",
    allowed: "only where steps say what it does",
  },
];

const malformed: ReadonlyArray<readonly [place: string, value: unknown, allowed: string]> = [
  [`${days}[0].launchesByHour`, Array<number>(25).fill(4), "at most 24 open hours"],
  [`${days}[0].launchesByHour`, [], "at least one open hour"],
  [`${days}[0].launchesByHour[2]`, -1, "at least 0 launches"],
  [`${days}[0].launchesByHour[2]`, 1e9, "at most 200 launches in an hour"],
  [`${days}[0].daysPerYear`, 0, "more than 0 days"],
  [`${days}[0].daysPerYear`, 366, "at most 365 days"],
  [`${station}.opens`, "25:00", "HH:MM"],
  [`${station}.service.quickCheck`, "0 min", "a short time above zero"],
  [`${station}.service.quickCheck`, "4 ft", "a short time such as"],
  [`${station}.service.setAsideShare`, "101 %", "a share of at most 100 %"],
  [`${station}.service.setAsideShare`, "-1 %", "a share of at least 0"],
  [`${station}.service.spread`, "normal", "one of exponential, constant"],
  [`${station}.target.share`, "100 %", "a share below 100 %"],
  [`${station}.target.wait`, absent, "a short time such as"],
  [`${station}.mostInspectors`, 0, "at least 1 inspector"],
  [`${station}.mostInspectors`, 2.5, "a whole number"],
  [`${station}.wage`, "$23", "money per hour"],
  [`${station}.origin`, "", "a text that is not empty"],
];

describe("a station", () => {
  it.each(impossible)("is refused for $why", expectContradiction);

  it.each(malformed)("is refused for %s of %j, told as %s", (place, value, allowed) => {
    const path = placeIn(exampleDocument(), place).text;
    expect(problemsIn(editedText([[place, value]]))).toContainEqual({
      path,
      found: expect.any(String),
      allowed: expect.stringContaining(allowed),
      remedy: expect.stringMatching(/^[A-Z].*\.$/),
    });
  });

  it("may fill the year and the day", () => {
    const document = exampleDocument();
    put(document, days, [
      { id: "all", name: "All days", daysPerYear: 365, launchesByHour: Array<number>(24).fill(1) },
    ]);
    const [run] = staffStations(readStudyText(JSON.stringify(document), "study.json"));
    expect(run?.staffing.boatsPerYear).toBe(365 * 24);
  });

  it("reaches the model in hours, with the loading on the wage and exponential times if it says nothing", () => {
    const [run] = staffStations(readStudyText(editedText([]), "study.yaml"));
    // the example's 4 min, 25 min, 3 %, 10 min, and $23/h with 24 % on top
    expect(run?.input.service).toEqual({
      quickCheckHours: expect.closeTo(4 / 60, 12),
      fullInspectionHours: expect.closeTo(25 / 60, 12),
      setAsideShare: 0.03,
      spread: "exponential",
    });
    expect(run?.input.target).toEqual({ share: 0.9, hours: expect.closeTo(10 / 60, 12) });
    expect(run?.input.wagePerHour).toBeCloseTo(23 * 1.24, 10);
  });

  it("draws fewer days where a day has very many boats, so that it is quick", () => {
    // 10 million boats served in all: of 3 × 24 × 200 boats a round of days, by 1 to 20 inspectors, 34.7 rounds
    const daysDrawn = (dayTypes: unknown, mostInspectors: number) => {
      const edits = [[days, dayTypes] as const, [`${station}.mostInspectors`, mostInspectors] as const];
      return staffStations(readStudyText(editedText(edits), "study.yaml"))[0]?.input.sampling.replications;
    };
    const busy = ["a", "b", "c"].map((id) => ({
      id,
      name: id,
      daysPerYear: 100,
      launchesByHour: Array<number>(24).fill(200),
    }));
    expect(daysDrawn(busy, 20)).toBe(34);
    expect(daysDrawn(valueAt(exampleDocument(), days), 6)).toBe(100);
  });

  it("is staffed alike each time, and not at all where the study has none", () => {
    const document = readStudyText(editedText([]), "study.yaml");
    expect(staffStations(document)).toEqual(staffStations(document));
    expect(staffStations(readStudyText(editedText([[station, absent]]), "study.yaml"))).toEqual([]);
  });
});

describe("Sorrel Bend's station", () => {
  const document = readStudyText(editedText([]), "study.yaml");
  const [run] = staffStations(document);
  if (!run) throw new Error("the example has no station");
  const { staffing } = run;

  it("sees the boats that its option checks", () => {
    // 26,600 launches; 46 % × 85 % of them pass with a seal; 93 % of the rest come in open hours
    const checked = 26_600 * (1 - 0.46 * 0.85) * 0.93;
    expect(staffing.boatsPerYear / checked).toBeGreaterThan(0.97);
    expect(staffing.boatsPerYear / checked).toBeLessThan(1.03);
  });

  it("keeps its target on all days with more inspectors on busier ones, at hours near those of the staff list", () => {
    const inspectors = staffing.dayTypes.map((each) => each.inspectors);
    expect(staffing.dayTypes.every(({ keepsTarget }) => keepsTarget)).toBe(true);
    expect(Math.max(...inspectors)).toBe(inspectors[0]);
    expect(Math.min(...inspectors)).toBe(inspectors.at(-1));
    const listed = 4300 + 700;
    expect(Math.abs(staffing.staffHoursPerYear / listed - 1)).toBeLessThan(0.2);
  });

  it("has no hour on its peak in which fewer inspectors could do the work that comes", () => {
    // peak hour 22 boats × (4 min + 3 % × 25 min) = 104.5 min of work: two inspectors at least
    expect(staffing.dayTypes[0]?.inspectors).toBeGreaterThanOrEqual(2);
  });
});
