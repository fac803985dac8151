import { describe, expect, it } from "vitest";
import { serving } from "./serving.js";

type Served = Awaited<ReturnType<typeof serving>>;

const typedAt = async ({ ask }: Served, fields: Readonly<Record<string, string>>) => {
  const response = await ask(`/start/balance?${new URLSearchParams(fields)}`);
  return (await response.json()) as {
    balance: string;
    range: string;
    faults: readonly { id: string; place: string; text: string }[];
  };
};

describe("the balance of what is typed on the short path", () => {
  it("is there from the first structure on, at central values", async () => {
    const served = await serving();
    const before = await typedAt(served, { depth: "80" });
    expect(before.balance).toContain("once there is a structure");
    const after = await typedAt(served, { depth: "80", "intakes/0/flow": "20" });
    expect(after.balance).toContain("Answer, at central values");
    expect(after.range).toBe("");
  });

  it("has its range from few draws once it is asked for", async () => {
    const { range } = await typedAt(await serving(), { "intakes/0/flow": "20", range: "1" });
    expect(range).toMatch(/^First estimate, from few draws: net benefit between .+ and .+\.$/);
  });

  it("says in the page's words which entry is wrong, and what is allowed", async () => {
    const { balance } = await typedAt(await serving(), { "intakes/0/flow": "lots" });
    expect(balance).toContain("Intake 1, largest flow: Found &quot;lots&quot;; allowed: a flow such as");
  });

  it("says of each entry what is wrong, by its input, until it is mended", async () => {
    const served = await serving();
    const { faults } = await typedAt(served, { depth: "deep", "intakes/0/flow": "lots", ramps: "2" });
    expect(faults.map(({ id, place }) => [id, place])).toEqual([
      ["f-depth", "Greatest depth"],
      ["f-intakes-0-flow", "Intake 1, largest flow"],
    ]);
    expect((await typedAt(served, { depth: "80", "intakes/0/flow": "20" })).faults).toEqual([]);
  });

  it("says a velocity in the units of the study: 66 cfs in 8 in are 57.6 m/s", async () => {
    const typed = { "intakes/0/flow": "66 cfs", "intakes/0/pipe": "8 in" };
    // π/4·(8/12)² = 0.349 ft², and 66/0.349 = 189 ft/s
    const us = await typedAt(await serving(), typed);
    expect(us.balance).toContain("in which 66 cfs run at 189 ft/s");
    const si = await typedAt(await serving(), { ...typed, units: "si" });
    expect(si.balance).toContain("at 57.6 m/s");
  });

  it("says what contradicts the study that would be made: mussels found after it begins", async () => {
    const { balance } = await typedAt(await serving(), { ramps: "2", infestedSince: "2090" });
    expect(balance).toContain("Year mussels were found: Found 2090; allowed: a year up to the start year");
  });
});

describe("the balance of a form that is not saved yet", () => {
  it("moves with the form, and nothing is kept", async () => {
    const served = await serving();
    const { id, revision } = served.studies.copy("example-sorrel-bend", "Ada");
    const tried = async (fields: Readonly<Record<string, string>>) => {
      const body = new URLSearchParams({ "#base": "1", "#expected": "1", ...fields });
      const response = await served.ask(`/studies/${id}/edit/boats?try`, { method: "POST", body });
      return ((await response.json()) as { balance: string }).balance;
    };
    const asKept = await tried({});
    expect(asKept).toContain("Answer, at central values");
    expect(await tried({ "boats/chance/ownRate/value": "9 %", "boats/launches/jul": "1" })).not.toBe(asKept);
    expect(await tried({ "boats/launches/jul": "many" })).toContain("No balance yet");
    expect(served.studies.find(id)?.revision).toBe(revision);
  });
});

describe("labels within a sentence", () => {
  it("keep the capitals of names and abbreviations", async () => {
    const { lowered } = await import("../../src/editor/labels.js");
    expect(
      ["pH", "US units", "January", "Hazen–Williams C", "Greatest depth", "eDNA samples"].map(lowered),
    ).toEqual(["pH", "US units", "January", "Hazen–Williams C", "greatest depth", "eDNA samples"]);
  });
});
