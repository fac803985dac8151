import { describe, expect, it } from "vitest";
import { reportContext } from "../../src/report/document/context.js";
import { kindCautions } from "../../src/report/rack/kind-cautions.js";
import { unitCostsTable } from "../../src/report/rack/unit-costs-table.js";
import { exampleRun } from "./runs.js";

const ninemoss = reportContext(exampleRun("ninemoss"));
const sorrelBend = reportContext(exampleRun("sorrel-bend"));
const matureOf = (id: string) =>
  ninemoss.traced.structures.find(({ result }) => result.structure.id === id)?.cost.matureMean ?? Number.NaN;

describe("what mussels cost by water and land", () => {
  const found = ninemoss.traced.structures.flatMap(({ unitCosts }) => unitCosts);

  it("is the mature yearly cost over what a year gives", () => {
    const [water, land] = found;
    // By hand: 6, 14, 20, 16 and 5 thousand m³; 24 ha.
    expect(water).toMatchObject({ what: "water delivered", quantity: 61_000, measure: "volume" });
    expect(land).toMatchObject({ quantity: 240_000, measure: "landArea" });
    expect(water?.costPerYear).toBeCloseTo(matureOf("orchard-pumps"), 9);
    expect((water?.perUnit ?? 0) * 61_000).toBeCloseTo(matureOf("orchard-pumps"), 9);
  });

  it("has the intake's cost beside that of its treatment", () => {
    const [alone, together] = found.filter(({ measure }) => measure === "treatedVolume");
    expect(alone?.alongWith).toBeUndefined();
    expect(together?.alongWith).toBe("Village water intake");
    expect((together?.costPerYear ?? 0) - (alone?.costPerYear ?? 0)).toBeCloseTo(
      matureOf("village-intake"),
      9,
    );
  });

  it("is a row each, with its unit", () => {
    const rows = unitCostsTable(ninemoss)?.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];
    expect(rows.map(([name]) => name)).toEqual([
      "Trust orchard pumping plant",
      "Trust orchard pumping plant",
      "Trout hatchery",
      "Village waterworks",
      "Village waterworks, with Village water intake",
    ]);
    expect(rows[1]?.slice(1, 3)).toEqual(["Land irrigated", "24 ha"]);
    expect(rows[1]?.[4]).toMatch(/^€[\d.]+\/ha$/);
    expect(rows[4]?.[4]).toMatch(/^€[\d.]+\/ML$/);
  });

  it("is left out where no structure serves land, fish or water works", () => {
    expect(unitCostsTable(sorrelBend)).toBeUndefined();
  });
});

describe("cautions of kinds of structure", () => {
  it("are told once for each kind that the study has", () => {
    expect(kindCautions(sorrelBend)).toEqual([]);
    const cautions = kindCautions(ninemoss);
    expect(cautions.map(({ kind }) => kind)).toEqual(["Pumping plant", "Hatchery", "Treatment plant"]);
    const [pumps, fish, works] = cautions.map(({ text }) => text);
    expect(pumps).toMatch(/Lock out.*confined spaces.*pressure.*pesticide/s);
    expect(fish).toMatch(/fish health/);
    expect(works).toMatch(/drinking-water program/);
  });
});
