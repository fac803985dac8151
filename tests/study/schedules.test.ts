import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { absent, editedText, modelOf, problemsIn } from "./example.js";

const lower = {
  id: "lower-winter",
  name: "Lower winter level",
  drawdown: [
    { on: "02-01", elevation: "2,090 ft" },
    { on: "06-01", elevation: "2,130 ft" },
  ],
};
const schedules = (...changed: object[]) =>
  ["lake.otherSchedules", changed.map((each) => ({ ...lower, ...each }))] as const;

const doNothing = { afterInfestation: { share: "0 %" } };
const scheduleOnly = { id: "winter-drying", name: "Dry the bays", schedule: lower.id, ...doNothing };
const baseline = { id: "none", name: "Nothing", ...doNothing };
const options = (...list: object[]) => ["options", list] as const;
const requested = ["study.requestedOption", scheduleOnly.id] as const;

const cases: readonly Contradicting[] = [
  {
    why: "two with one id",
    edits: [schedules({}, {})],
    at: "lake.otherSchedules[1].id",
    found: '"lower-winter" a second time',
    allowed: "an id used once",
  },
  {
    why: "a level below the lowest",
    edits: [schedules({ drawdown: [{ on: "02-01", elevation: "1 ft" }] })],
    at: "lake.otherSchedules[0].drawdown[0].elevation",
    found: "1 ft",
    allowed: `from ${typed("lake.minimumElevation")} to ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a level above the highest",
    edits: [schedules({}, { id: "high", drawdown: [{ on: "02-01", elevation: "9,000 ft" }] })],
    at: "lake.otherSchedules[1].drawdown[0].elevation",
    found: "9,000 ft",
    allowed: `from ${typed("lake.minimumElevation")} to ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a day that no month has",
    edits: [schedules({ drawdown: [{ on: "02-30", elevation: "2,100 ft" }] })],
    at: "lake.otherSchedules[0].drawdown[0].on",
    allowed: "a day that the month has",
  },
  {
    why: "points that are not in order",
    edits: [schedules({ drawdown: [...lower.drawdown].reverse() })],
    at: "lake.otherSchedules[0].drawdown[1].on",
    found: '"02-01"',
    allowed: 'after that of the point before, "06-01"',
  },
  {
    why: "neither points nor record",
    edits: [schedules({ drawdown: undefined })],
    at: "lake.otherSchedules[0].drawdown",
    found: "nothing",
    allowed: "under record",
  },
  {
    why: "points and a record",
    edits: [schedules({ record: { csv: "date,elevation (ft)\n", origin: "invented" } })],
    at: "lake.otherSchedules[0].record",
    found: "a record beside a drawdown",
    allowed: "not both",
  },
  {
    why: "a record that cannot be read",
    edits: [schedules({ drawdown: undefined, record: { csv: "date|level", origin: "invented" } })],
    at: "lake.otherSchedules[0].record.csv, line 1",
    found: "date|level",
    allowed: "a comma, semicolon or tab between",
  },
  {
    why: "a value of stored water from nowhere",
    edits: [["lake.storageValue", "$180/acre-ft"]],
    at: "lake.storageValueOrigin",
    found: "nothing",
    allowed: "where the value of stored water comes from",
  },
  {
    why: "a value of stored water in another currency",
    edits: [
      ["lake.storageValue", "€0.15/m3"],
      ["lake.storageValueOrigin", "invented"],
    ],
    found: "€0.15/m3",
    allowed: "the study's currency, USD",
  },
];

describe("other schedules of a lake", () => {
  it.each(cases)("are refused for $why", expectContradiction);

  it("stand in the model as points in metres, beside the value of stored water", () => {
    const text = editedText([
      schedules({}),
      ["lake.storageValue", "$0.15/m3"],
      ["lake.storageValueOrigin", "invented"],
    ]);
    const { lake } = modelOf(readStudyText(text, "study.yaml"));
    expect(lake.storageValue).toBe(0.15);
    expect(lake.otherSchedules).toEqual([
      {
        id: "lower-winter",
        name: "Lower winter level",
        // 2,090 ft and 2,130 ft of 0.3048 m; 1 June is the 152nd day
        drawdown: [
          { dayOfYear: 31, elevation: expect.closeTo(637.032, 9) },
          { dayOfYear: 151, elevation: expect.closeTo(649.224, 9) },
        ],
      },
    ]);
  });

  it("are none, and stored water is worth nothing, where the study says nothing", () => {
    const { lake } = modelOf(readStudyText(editedText([]), "study.yaml"));
    expect(lake).toMatchObject({ otherSchedules: [], storageValue: 0 });
    expect(lake.record).toBeUndefined();
  });
});

describe("an option with a schedule", () => {
  it("needs no steps and may be the one requested", () => {
    const text = editedText([schedules({}), options(baseline, scheduleOnly), requested]);
    const [none, drying] = modelOf(readStudyText(text, "study.yaml")).options;
    expect(none).not.toHaveProperty("schedule");
    expect(drying).toMatchObject({ id: "winter-drying", schedule: "lower-winter" });
    expect(drying?.steps).toBeUndefined();
  });

  it("is refused if the schedule is not there", () => {
    const text = editedText([schedules({}), ["options[steps].schedule", "higher-winter"]]);
    expect(problemsIn(text)).toMatchObject([
      {
        path: expect.stringMatching(/^options\[.*\]\.schedule$/),
        found: '"higher-winter"',
        allowed: "an id from lake.otherSchedules: lower-winter",
      },
    ]);
  });

  it("is refused if the lake has no other schedules", () => {
    expect(problemsIn(editedText([["options[steps].schedule", "lower-winter"]]))).toMatchObject([
      { found: '"lower-winter"', allowed: expect.stringContaining("there is none yet") },
    ]);
  });

  it("is no option to compare the others with", () => {
    const text = editedText([
      schedules({}),
      options(scheduleOnly, { ...scheduleOnly, id: "b", name: "Another" }),
      requested,
    ]);
    expect(problemsIn(text)).toMatchObject([
      { path: "options", found: "0 options with neither steps nor schedule" },
    ]);
  });

  it("leaves the option that does nothing without a request", () => {
    const text = editedText([
      schedules({}),
      options(baseline, scheduleOnly),
      ["study.requestedOption", "none"],
    ]);
    expect(problemsIn(text)).toMatchObject([
      {
        path: "study.requestedOption",
        found: '"none"',
        allowed: "the id of an option with steps or schedule: winter-drying",
      },
    ]);
  });

  it("is not held against schedules of a lake that is not sound itself", () => {
    const text = editedText([
      ["lake.species", absent],
      ["options[steps].schedule", "lower-winter"],
    ]);
    expect(problemsIn(text).map(({ path }) => path)).toEqual(["lake.species"]);
  });
});
