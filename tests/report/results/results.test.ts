import { describe, expect, it } from "vitest";
import { resultsJson } from "../../../src/report/results/results.js";
import { exampleNames } from "../../study/example.js";
import { deeper, dryOut, editedRun, withSchedule } from "../edited.js";
import { exampleRun } from "../runs.js";

interface Results {
  readonly structures: ReadonlyArray<{
    readonly id: string;
    readonly components: ReadonlyArray<{
      readonly name: string;
      readonly pinned: { readonly reason: string; readonly cheapest: { readonly id: string } } | null;
      readonly impossible: ReadonlyArray<{ readonly id: string; readonly reason: string }>;
    }>;
  }>;
  readonly schedules: ReadonlyArray<{
    readonly id: string | null;
    readonly operating: ReadonlyArray<{ readonly amount: string }>;
    readonly operatingPerYear: string;
    readonly levels: { readonly daily: readonly number[] };
  }>;
  readonly options: ReadonlyArray<{
    readonly id: string;
    readonly schedule: string | null;
    readonly schedulePerYear: string;
  }>;
}

const reason = "no oxidant by permit";
const run = editedRun(
  [...withSchedule, ["structures[city-intake].pinned", [{ part: "conduit", plan: "divers-6", reason }]]],
  dryOut,
);
const results = JSON.parse(JSON.stringify(resultsJson(run))) as Results;

describe("the results as JSON", () => {
  it("hold each schedule with operating lines that add up to the yearly cost of the option that follows it", () => {
    expect(results.schedules.map(({ id }) => id)).toEqual([null, deeper.id]);
    const other = results.schedules[1];
    const cents = other?.operating.reduce((sum, { amount }) => sum + Math.round(Number(amount) * 100), 0);
    const follower = results.options.find(({ id }) => id === dryOut.id);
    expect(follower?.schedule).toBe(deeper.id);
    expect(cents).toBe(Math.round(Number(follower?.schedulePerYear) * 100));
    expect(other?.operatingPerYear).toBe(follower?.schedulePerYear);
    expect(other?.levels.daily).toHaveLength(365);
    expect(results.options.find(({ id }) => id === "weekends")?.schedule).toBeNull();
  });

  it("hold what the study prescribes beside the cheapest, and what is not possible", () => {
    const parts = results.structures.find(({ id }) => id === "city-intake")?.components ?? [];
    const conduit = parts.find(({ name }) => name === "conduit");
    expect(conduit?.pinned?.reason).toBe(reason);
    expect(conduit?.pinned?.cheapest.id).not.toBe("divers-6");
    expect(parts.filter(({ pinned }) => pinned !== null)).toHaveLength(1);
    // at 2,086 ft the intake is under water all year
    expect(conduit?.impossible).toContainEqual(
      expect.objectContaining({ id: "dry", reason: "the water never leaves it" }),
    );
  });
});

describe("the results of every example", () => {
  it.each(exampleNames)(
    "hold no number that JSON lacks in %s, so that a report on it can be issued",
    (name) => {
      const lacking: string[] = [];
      const search = (value: unknown, path: string): void => {
        if (typeof value === "number" && !Number.isFinite(value)) lacking.push(path);
        if (typeof value !== "object" || value === null) return;
        for (const [key, each] of Object.entries(value)) search(each, `${path}.${key}`);
      };
      search(resultsJson(exampleRun(name)), "");
      expect(lacking).toEqual([]);
    },
  );
});
