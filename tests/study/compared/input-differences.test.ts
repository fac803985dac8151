import { describe, expect, it } from "vitest";
import { inputDifferences } from "../../../src/study/compared/input-differences.js";
import { mixture } from "../../../src/study/compared/mixture.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { takeRecord } from "../../../src/study/records/at-hand.js";
import { absent, editedText, exampleDocument, valueAt } from "../example.js";
import { csvOf, datesFrom } from "../records.js";

type Edits = Parameters<typeof editedText>[0];

const study = (...edits: Edits) => readStudyText(editedText(edits, "ninemoss"), "study.yaml");
const plain = study();
const differences = (...edits: Edits) => inputDifferences(plain, study(...edits));
const listOf = (path: string): unknown[] => {
  const list = valueAt(exampleDocument("ninemoss"), path);
  return Array.isArray(list) ? list : [];
};

describe("inputs that differ", () => {
  it("are told with their names in words and both values as typed", () => {
    expect(differences(["structures[jetty].wettedArea", "540 ft2"])).toEqual([
      {
        place: "structures/jetty/wettedArea",
        name: "wetted area of Trust jetty",
        owner: "structures/jetty",
        ownerName: "Trust jetty",
        kind: "changed",
        left: "45 m2",
        right: "540 ft2",
        movesFigures: true,
      },
    ]);
  });

  it("are not those that are the same in another unit", () => {
    expect(differences(["structures[jetty].wettedArea", "450000 cm2"])).toEqual([]);
  });

  it("are those whose range alone differs", () => {
    const [found] = differences(["structures[jetty].wettedArea", "40 to 45 to 60 m2"]);
    expect(found).toMatchObject({ left: "45 m2", right: "40 to 45 to 60 m2" });
  });

  it("are matched by id: another order is no difference", () => {
    expect(differences(["structures", listOf("structures").toReversed()])).toEqual([]);
  });

  it("name what was added and what was removed as a whole", () => {
    const withoutSlip = listOf("structures").filter((_, index) => index !== 3);
    expect(differences(["structures", withoutSlip])).toEqual([
      expect.objectContaining({
        place: "structures/slip",
        name: "structures: “Village slip”",
        kind: "removed",
        left: "“Village slip”",
        right: undefined,
      }),
    ]);
    const [added] = inputDifferences(study(["structures", withoutSlip]), plain);
    expect(added).toMatchObject({ kind: "added", name: "structures: “Village slip”", left: undefined });
  });

  it("tell of a table by month only the months that differ, and of a record its first line that does", () => {
    expect(differences(["lake.surfaceTemperature.jul", "23 degC"])).toMatchObject([
      { name: "surface temperature of Ninemoss Lake", left: "jul 21 degC", right: "jul 23 degC" },
    ]);
    const csv = String(valueAt(exampleDocument("ninemoss"), "lake.record.csv"));
    const [record] = differences(["lake.record.csv", csv.replace("2019-01,411.78", "2019-01,411.80")]);
    expect(record).toMatchObject({
      left: "73 lines; line 2: 2019-01,411.78",
      right: "73 lines; line 2: 2019-01,411.80",
    });
  });

  it("say which move no figure: names, descriptions, where figures come from", () => {
    const found = differences(
      ["lake.description", "Another lake"],
      ["study.preparedBy", "Someone else"],
      ["boats.classes[visitors].origin", "counted"],
      ["money.horizon", 25],
    );
    expect(found.map(({ place, movesFigures }) => [place, movesFigures])).toEqual([
      ["study/preparedBy", false],
      ["lake/description", false],
      ["boats/classes/visitors/origin", false],
      ["money/horizon", true],
    ]);
  });
});

describe("a study between two", () => {
  const right = study(["money.horizon", 25], ["structures[jetty].wettedArea", "50 m2"]);

  it("has the places that are asked for as the right one has them, all others as the left", () => {
    const mixed = mixture(plain, right, (place) => place === "money/horizon");
    expect(inputDifferences(plain, mixed).map(({ place }) => place)).toEqual(["money/horizon"]);
    expect(inputDifferences(mixed, right).map(({ place }) => place)).toEqual(["structures/jetty/wettedArea"]);
  });

  it("is the left one where no place is asked for", () => {
    expect(mixture(plain, right, () => false)).toEqual(plain);
  });

  it("are of two kept records their levels alone, and not also their digests", () => {
    const [one, other] = [412, 412.2].map((level) =>
      csvOf(datesFrom("2010-01-01", "2011-12-31"), () => level),
    );
    const withRecord = (csv = "", more: object = {}): Edits => {
      const record = { kept: takeRecord(csv), name: "a.csv", origin: "invented gauge", ...more };
      return [
        ["lake.drawdown", absent],
        ["lake.record", record],
      ];
    };
    const mapped = { export: { date: "Day", level: "Pool (m)" } };
    const found = inputDifferences(study(...withRecord(one)), study(...withRecord(other, mapped)));
    expect(found.map(({ place, movesFigures }) => [place, movesFigures])).toEqual([
      ["lake/record/csv", true],
      ["lake/record/export", false],
    ]);
  });
});
