import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { assumed, assumedWith } from "./assumptions.js";
import { drawnDownLake } from "./lakes.js";
import { floatingDock, plant, studyOf, wholeStudy } from "./study.js";

const checkOf = (input: Parameters<typeof compare>[0], words: string, source = assumed) =>
  compare(input, source).checks.find(({ what }) => what.includes(words));

describe("the plausibility checks", () => {
  it("pass for the invented study with a structure of each kind", () => {
    const failed = compare(wholeStudy, assumed).checks.filter(({ passed }) => !passed);
    // The canal takes little water through a long conduit, and pays more by volume than any published water works; the
    // city, whose outages cost its water, a little more.
    expect(failed.map(({ what }) => what)).toEqual([
      "City intake: cost of its water in a mature infestation",
      "Canal intake: cost of its water in a mature infestation",
    ]);
  });

  it("fail where the entered storage disagrees with the entered areas", () => {
    // By hand: 1 to 3 km2 over 40 m hold 80 million m3; 60 million are 33 % off.
    const [bottom, top] = drawnDownLake.storageTable;
    if (!bottom || !top) throw new Error("no table");
    const wrong = { ...drawnDownLake, storageTable: [bottom, { ...top, storage: 60e6 }] };
    expect(checkOf(studyOf([floatingDock]), "Entered storage")?.passed).toBe(true);
    const check = checkOf(studyOf([floatingDock], { lake: wrong }), "Entered storage");
    expect(check?.passed).toBe(false);
    expect(check?.found).toContain("33.3 %");
  });

  it("say nothing of storage where a single row of the table bounds none", () => {
    const row = { elevation: 100, area: 3e6, storage: 80e6 };
    const lake = { ...drawnDownLake, storageTable: [row] };
    expect(checkOf(studyOf([floatingDock], { lake }), "Entered storage")).toBeUndefined();
  });

  it("hold the yearly cost of intakes and power plants alone, which the published costs cover", () => {
    const held = compare(wholeStudy, assumed).checks.filter(({ what }) =>
      what.includes("in a mature infestation"),
    );
    const plants = wholeStudy.structures.filter(({ kind }) => kind === "intake" || kind === "hydropower");
    expect(plants.length).toBeGreaterThan(1);
    expect(held.map(({ what }) => what.split(":")[0])).toEqual(plants.map(({ name }) => name));
  });

  it("hold the energy lost against the energy made, and nothing else that a plant pays for", () => {
    // Money's side as the other route: what lost energy costs in a year over its price is the energy.
    const input = studyOf([plant]);
    const [result] = compare(input, assumed).structures;
    if (result === undefined) throw new Error("no plant");
    const made = result.cleanEnergy.reduce((sum, month) => sum + month, 0);
    const lost = result.years.map((lines) =>
      lines.reduce((sum, { what, quantity }) => sum + (what.includes("energy") ? quantity : 0), 0),
    );
    expect(result.years.flat().some(({ what }) => !what.includes("energy"))).toBe(true);
    const share = (Math.max(...lost) / made) * 100;
    expect(checkOf(input, "energy lost of the energy made")?.found).toBe(
      `${share.toFixed(2)} % in the worst year`,
    );
  });

  it("fail where a layer grows heavier than any published one", () => {
    // Above 12 kg/m2 in heated lakes (Konin lakes); at most 15 is accepted.
    expect(checkOf(studyOf([floatingDock]), "mature layer")?.passed).toBe(true);
    const crowded = assumedWith({ "growth.cover-limit": 12, "growth.settlers-per-month": 40_000 });
    expect(checkOf(studyOf([floatingDock]), "mature layer", crowded)?.passed).toBe(false);
  });

  it("fail where no plan keeps a part's limits, and say which limit", () => {
    const weak = { ...plant, rack: { ...plant.rack, headLossLimit: 1e-6 } };
    const check = checkOf(studyOf([weak]), "trash rack: its plan keeps its limits");
    expect(check?.passed).toBe(false);
    expect(check?.found).toContain("head loss above the limit");
  });
});
