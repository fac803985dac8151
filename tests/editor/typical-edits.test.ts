import { describe, expect, it } from "vitest";
import { listedIn, typicalEdits, typicalIn } from "../../src/editor/typical/typical-edits.js";

const document = {
  study: {
    typical: {
      "lake/airTemperature": "typical.air-mean",
      "structures/docks/wettedArea": "typical.slip-area",
      "structures/docks/depth": "typical.dock-depth",
      "options/wanted/yearly/0/cost": "typical.inspectors",
      "structures/gone/depth": "typical.dock-depth",
    },
  },
  lake: { airTemperature: { jan: "1 degC", feb: "2 degC", mar: "3 degC" } },
  structures: [{ id: "ramp" }, { id: "docks", depth: "1 ft", wettedArea: "5 ft2" }],
  options: [{ id: "wanted", yearly: [{ cost: "$1/yr" }, { cost: "$2/yr" }] }],
};

/** The list after some edits; as it was if they change nothing of it. */
function left(...edits: Parameters<typeof typicalEdits>[1]): string[] {
  const [edit] = typicalEdits(document, edits);
  return Object.keys(edit && "value" in edit ? Object(edit.value) : listedIn(document));
}

describe("the list of typical values", () => {
  it("is of places that are there, found by ids", () => {
    expect(typicalIn(document).map(({ path }) => path.join("."))).toEqual([
      "lake.airTemperature",
      "structures.1.wettedArea",
      "structures.1.depth",
      "options.0.yearly.0.cost",
    ]);
  });

  it("loses a value that its author edits, and no other", () => {
    expect(left({ at: ["structures", 1, "depth"], value: "2 ft" })).not.toContain("structures/docks/depth");
    expect(left({ at: ["structures", 1, "depth"], value: "2 ft" })).toContain("structures/docks/wettedArea");
  });

  it("keeps the other months of a temperature of which one is edited", () => {
    const found = left({ at: ["lake", "airTemperature", "feb"], value: "5 degC" });
    expect(found).toContain("lake/airTemperature/jan");
    expect(found).toContain("lake/airTemperature/mar");
    expect(found).not.toContain("lake/airTemperature/feb");
    expect(found).not.toContain("lake/airTemperature");
  });

  it("follows a structure whose id changes", () => {
    const found = left({ at: ["structures", 1, "id"], value: "marina" });
    expect(found).toContain("structures/marina/depth");
    expect(found).not.toContain("structures/docks/depth");
  });

  it("keeps a structure that is moved, and loses one that is removed", () => {
    expect(left({ at: ["structures", 1], moveTo: 0 })).toContain("structures/docks/depth");
    expect(left({ at: ["structures", 1], remove: true })).not.toContain("structures/docks/depth");
  });

  it("loses rows that are known by their number where one of them goes", () => {
    expect(left({ at: ["options", 0, "yearly", 0], remove: true })).not.toContain(
      "options/wanted/yearly/0/cost",
    );
  });

  it("is not written anew by an edit elsewhere, nor in a study that has none", () => {
    expect(typicalEdits({ ...document, study: {} }, [{ at: ["lake", "name"], value: "Lake" }])).toEqual([]);
  });
});
