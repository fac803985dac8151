import { describe, expect, it } from "vitest";
import { at, sumOf } from "../../../src/lists.js";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { deeper, dryOut, editedRun, withSchedule } from "../../report/edited.js";
import { assumptions, exampleDocument, exampleRun } from "../../report/runs.js";

const runs = [
  exampleRun("sorrel-bend"),
  exampleRun("ninemoss"),
  editedRun([...withSchedule, ["structures[city-intake].elevation", "2,090 ft"]], dryOut),
];

describe.each(runs)("what is told of $document.lake.name with $document.options.length options", (run) => {
  const { comparison } = run;
  const { baseline } = comparison;
  const { mature, options, schedules, structures, levels, years, lines } = run.traced();
  const infestation = baseline.presentValue.infestation.toNumber();
  const attempts = baseline.containment?.presentValue.toNumber() ?? 0;

  it("is worked out once", () => {
    expect(run.traced()).toBe(run.traced());
  });

  it("adds up to the expected cost of an infestation: by structure, by line and by year", () => {
    const ofStructures = structures.map(({ cost }) => cost.expected.toNumber());
    const ofNamedLines = structures.flatMap((each) => each.lines.map((line) => line.presentValue.toNumber()));
    const ofYears = years.map(({ presentValue }) => presentValue);
    for (const parts of [ofStructures, ofNamedLines, ofYears])
      expect(sumOf(parts) + attempts).toBeCloseTo(infestation, 3);
  });

  it("has every line of every year under each schedule of levels", () => {
    const bySchedule = [...lines()];
    expect(bySchedule[0]?.[0]).toBe(comparison.schedules[0]);
    for (const [{ infestation: cost }, own] of bySchedule)
      for (const [year, all] of cost.byYear.entries())
        expect(sumOf(own.map((line) => line.years[year]?.cents ?? 0))).toBe(all.times(100).toNumber());
  });

  it("adds up to a year of each program, and to its present value", () => {
    for (const { result, program, presentValueSoFar } of options) {
      const { staff, things, others, revenue } = program.ofBoard;
      const year = result.programPerYear.toNumber();
      expect(program.total.toNumber()).toBe(year);
      expect(sumOf([...program.costs, ...program.revenue].map(({ total }) => total.toNumber()))).toBeCloseTo(
        year,
        6,
      );
      expect(staff.plus(things).plus(others).plus(revenue).toNumber()).toBe(year);
      expect(presentValueSoFar.at(-1)).toBeCloseTo(result.presentValue.total.toNumber(), 3);
    }
  });

  it("holds options, schedules and structures in the order of the comparison", () => {
    expect(options.map(({ result }) => result)).toEqual([
      baseline,
      ...comparison.options.map(({ result }) => result),
    ]);
    expect(schedules.map(({ schedule }) => schedule)).toEqual(comparison.schedules);
    expect(structures.map(({ result }) => result)).toEqual(comparison.structures);
  });

  it("has the mean of whole cycles of mature years of each schedule, and what it saves of the lake's own levels", () => {
    for (const { schedule, matureMean, matureSaving } of schedules) {
      const { year, meanYears } = mature;
      const counted = schedule.infestation.byYear.slice(year, year + meanYears).map(Number);
      expect(matureMean).toBeCloseTo(sumOf(counted) / counted.length, 6);
      expect(matureSaving).toBe(schedules[0].matureMean - matureMean);
    }
  });

  it("counts each day at which the lake stands below an elevation as dry", () => {
    const { lowest, highest } = comparison.lake.band;
    const middle = (lowest + highest) / 2;
    const { days, longest } = levels.dryAt(middle);
    const below = comparison.lake.years.map(({ daily }) => daily.filter((level) => level < middle).length);
    expect(days).toEqual(below);
    expect(longest.run.days).toBeGreaterThan(0);
    expect(longest.run.days).toBeLessThanOrEqual(Math.max(...below));
  });
});

describe("what is told of a lake with other levels", () => {
  const { schedules, options } = at(runs, 2).traced();

  it("has what following them costs by what it is paid for, without the names of structures", () => {
    const { schedule, operatingByItem, operatingPerYear } = at(schedules, 1);
    const names = at(runs, 2).comparison.input.structures.map(({ name }) => name);
    expect(schedule.name).toBe(deeper.name);
    expect(sumOf([...operatingByItem.values()].map(Number))).toBeCloseTo(operatingPerYear.toNumber(), 6);
    for (const item of operatingByItem.keys())
      expect(names.some((name) => item.startsWith(name))).toBe(false);
  });

  it("names the intakes that levels leave above the lake", () => {
    // The irrigation's inlet stands at 2,109 ft, the city's here at 2,090 ft, both plants' at 2,078 ft; the lake's own
    // levels end at 2,100 ft, the deeper ones at 2,088 ft.
    expect(schedules.map(({ exposedInlets }) => exposedInlets)).toEqual([
      ["East bench irrigation intake"],
      ["City raw-water intake", "East bench irrigation intake"],
    ]);
  });

  it("tells at which yearly cost an option that follows them neither pays nor loses, and of no other option", () => {
    const following = options.filter(({ scheduleTurn }) => scheduleTurn);
    expect(following.map(({ result }) => result.option.id)).toEqual([dryOut.id]);
    const { result, scheduleTurn } = at(following, 0);
    const balance = at(runs, 2).comparison.options.find((each) => each.result === result);
    const weight = result.schedulePresentValue.dividedBy(result.schedulePerYear);
    const cost = scheduleTurn?.carried.times(weight).plus(scheduleTurn.otherCost);
    expect(cost?.toNumber()).toBeCloseTo(balance?.avoidedLoss.toNumber() ?? Number.NaN, 3);
  });

  it("parts the expected cost of an infestation by when it is noticed", () => {
    for (const { result, noticedCosts } of options) {
      const { lossesBefore, lossesAfter, doneAfter, attempts } = noticedCosts;
      const all = [lossesBefore, lossesAfter, doneAfter, attempts].map(Number);
      expect(sumOf(all)).toBeCloseTo(result.presentValue.infestation.toNumber(), 3);
    }
  });
});

describe("a study that is only prepared or compared", () => {
  it("traces nothing: neither its input nor its comparison holds it", () => {
    const prepared = prepareStudy(exampleDocument("ninemoss"), assumptions);
    expect(Object.keys(prepared)).not.toContain("traced");
    expect(Object.keys(at(runs, 1).comparison)).not.toContain("traced");
  });
});
