import { describe, expect, it } from "vitest";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { staffStations } from "../../../src/study/prepare/staffing.js";
import { coverageRuns, trafficOf } from "../../../src/study/prepare/traffic.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, expectMalformed } from "../contradicting.js";
import { absent, editedText, exampleDocument, valueAt } from "../example.js";

const station = "options[station].station";
const stationsOf = (document: StudyDocument) => staffStations(document, trafficOf(document.boats)?.scaled);
const open = "options[station].open";

const impossible: readonly Contradicting[] = [
  {
    why: "more boats in an hour than a station takes",
    // 32 of 26,119 launches come in the busiest hour
    edits: [["boats.launches.jul", 1_000_000]],
    at: station,
    found: "launches in the busiest hour, scaled to boats.launches",
    allowed: "at most 200 launches in an hour",
  },
  {
    why: "open hours in which no boat comes",
    edits: [[open, [{ from: "01:00", to: "03:00" }]]],
    at: station,
    found: "no boat to check in any open hour of “Fri–Sun, Jun–Aug” at “North ramp”",
    allowed: "boats in at least one open hour",
  },
  {
    why: "open hours that are not whole",
    edits: [[`${open}[0].to`, "20:30"]],
    found: '"20:30" after opening at 07:00',
    allowed: "a whole number of open hours",
  },
  {
    why: "a coverage in place of open hours",
    edits: [
      [open, absent],
      ["options[full-season].steps.coverage", "93 %"],
    ],
    at: "options[full-season].station",
    found: "a station without open hours",
    allowed: "a station only beside open",
  },
  {
    why: "a station of the option without steps",
    edits: [["options[none].station", valueAt(exampleDocument(), station)]],
    found: "a station of an option without steps",
    allowed: "only where steps say what it does",
  },
];

const malformed: ReadonlyArray<readonly [place: string, value: unknown, allowed: string]> = [
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

  it.each(malformed)("is refused for %s of %j, told as %s", expectMalformed);

  it("may fill the year and the day, and checks the boats without a seal", () => {
    const everyDay = { id: "all", name: "All days", days: 365, launchesByHour: Array<number>(24).fill(3) };
    const always = [{ from: "00:00", to: "24:00" }];
    const edits = [
      ["boats.traffic.dayTypes", [everyDay]],
      ["options[weekends].open", always],
      ["options[full-season].open", always],
    ] as const;
    const [run] = stationsOf(readStudyText(editedText(edits), "study.yaml"));
    // 26,600 launches, 46 % × 85 % of them with a seal
    expect(run?.staffing.boatsPerYear).toBeCloseTo(26_600 * (1 - 0.46 * 0.85), 6);
    expect(run?.days.map(({ siteId }) => siteId)).toEqual(["north", "dam", "cove"]);
  });

  it("may open at half past, for whole hours", () => {
    const edits = [[open, [{ from: "07:30", to: "15:30" }]]] as const;
    const [run] = stationsOf(readStudyText(editedText(edits), "study.yaml"));
    expect(new Set(run?.days.map(({ arrivalsByHour }) => arrivalsByHour.length))).toEqual(new Set([8]));
  });

  it("reaches the model in hours, with the loading on the wage and exponential times if it says nothing", () => {
    const [run] = stationsOf(readStudyText(editedText([]), "study.yaml"));
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
    const daysDrawn = (dayTypes: unknown, launches: number, mostInspectors: number) => {
      const always = [{ from: "00:00", to: "24:00" }];
      const edits = [
        ["boats.traffic.dayTypes", dayTypes],
        ["boats.launches.jul", launches],
        ["boats.classes[never-left].fouled", "0 %"],
        ["options[full-season].steps.seals", []],
        ["options[weekends].open", always],
        ["options[full-season].open", always],
        [`${station}.mostInspectors`, mostInspectors] as const,
      ] as const;
      return stationsOf(readStudyText(editedText(edits), "study.yaml"))[0]?.input.sampling.replications;
    };
    const busy = ["a", "b", "c"].map((id) => ({
      id,
      name: id,
      days: 100,
      launchesByHour: Array<number>(24).fill(200),
    }));
    // 20,400 launches in the other months; 3 × 100 × 24 × 199.9 in all, so that rounding stays below 200 an hour
    expect(daysDrawn(busy, 3 * 100 * 24 * 199.9 - 20_400, 20)).toBe(34);
    expect(daysDrawn(busy, 6200, 6)).toBe(100);
  });

  it("is simulated by the seed of the study", () => {
    const seedOf = (uncertainty: unknown) =>
      stationsOf(readStudyText(editedText([["study.uncertainty", uncertainty]]), "study.yaml"))[0]?.input
        .sampling.seed;
    expect(seedOf({ seed: 7 })).toBe(7);
    expect(seedOf(absent)).toBe(1);
  });

  it("is staffed alike each time, and not at all where the study has none", () => {
    const document = readStudyText(editedText([]), "study.yaml");
    expect(stationsOf(document)).toEqual(stationsOf(document));
    expect(stationsOf(readStudyText(editedText([[station, absent]]), "study.yaml"))).toEqual([]);
  });
});

describe("Sorrel Bend's stations", () => {
  const document = readStudyText(editedText([]), "study.yaml");
  const [run] = stationsOf(document);
  if (!run) throw new Error("the example has no station");
  const { staffing, days } = run;

  it("see the boats that their option checks", () => {
    // 26,600 launches; 46 % × 85 % of them pass with a seal; the rest in open hours
    const coverage = coverageRuns(document).find(({ optionId }) => optionId === "full-season")?.coverage ?? 0;
    expect(staffing.boatsPerYear).toBeCloseTo(26_600 * (1 - 0.46 * 0.85) * coverage, 6);
  });

  it("keep their target on all days, with no fewer inspectors where more boats come", () => {
    expect(staffing.dayTypes.every(({ keepsTarget }) => keepsTarget)).toBe(true);
    const at = (siteId: string, dayTypeId: string) =>
      staffing.dayTypes[days.findIndex((day) => day.siteId === siteId && day.dayTypeId === dayTypeId)]
        ?.inspectors ?? 0;
    for (const { siteId, dayTypeId } of days) {
      expect(at("north", dayTypeId)).toBeGreaterThanOrEqual(at(siteId, dayTypeId));
      expect(at(siteId, "summer-weekend")).toBeGreaterThanOrEqual(at(siteId, dayTypeId));
    }
  });

  it("need at least one inspector at each of three ramps while they are open, more than the staff list pays", () => {
    // 92 days of 13 h, 91 of 11 h and 62 of 9 h at three sites: 8,265 h; the list has 4,300 h and 700 h
    const least = 3 * (92 * 13 + 91 * 11 + 62 * 9);
    expect(least).toBe(8265);
    expect(staffing.staffHoursPerYear).toBeGreaterThan(least);
    expect(staffing.staffHoursPerYear).toBeLessThan(2 * least);
  });

  it("add up over sites", () => {
    const hours = days.reduce(
      (sum, { daysPerYear }, index) => sum + daysPerYear * (staffing.dayTypes[index]?.staffHoursPerDay ?? 0),
      0,
    );
    expect(staffing.staffHoursPerYear).toBeCloseTo(hours, 8);
  });
});

describe("a queue for each site", () => {
  it("needs no fewer inspectors' hours than one queue of the same boats", () => {
    // Three sites take three inspectors at least, where one queue does with one on calm days.
    const hours = (edits: Parameters<typeof editedText>[0]) =>
      stationsOf(readStudyText(editedText(edits), "study.yaml"))[0]?.staffing.staffHoursPerYear ?? 0;
    const pooled = hours([
      ["boats.sites", absent],
      ["options[weekends].open", [{ from: "07:00", to: "20:00" }]],
    ]);
    expect(pooled).toBeGreaterThan(0);
    expect(hours([])).toBeGreaterThan(pooled);
  });
});
