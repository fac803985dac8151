import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { readStudyFile, readStudyText } from "../../src/study/reading/read.js";
import { editedText, exampleDocument, exampleNames, examplePath, exampleText, valueAt } from "./example.js";

describe.each(exampleNames)("the example %s", (name) => {
  it("is read without problems", () => {
    expect(readStudyFile(examplePath(name)).study.invented).toBe(true);
  });

  it("gives the same study as JSON and as YAML", () => {
    const fromYaml = readStudyText(exampleText(name), "study.yaml");
    const document: unknown = parse(exampleText(name));
    expect(readStudyText(JSON.stringify(document), "study.json")).toEqual(fromYaml);
    expect(readStudyText(JSON.stringify(document, null, 2), "study.json")).toEqual(fromYaml);
    expect(readStudyText(stringify(document), "study.yaml")).toEqual(fromYaml);
  });

  it("gives the same study with the line ends of Windows and a byte order mark", () => {
    const windows = `\uFEFF${exampleText(name).replaceAll("\n", "\r\n")}`;
    expect(readStudyText(windows, "study.yaml")).toEqual(readStudyText(exampleText(name), "study.yaml"));
  });

  it("keeps each quantity as its author typed it", () => {
    const document = exampleDocument(name);
    const { lake, structures } = readStudyText(exampleText(name), "study.yaml");
    expect(lake.maximumElevation.text).toBe(valueAt(document, "lake.maximumElevation"));
    expect(lake.storageTable[0]?.storage.text).toBe(valueAt(document, "lake.storageTable[0].storage"));
    expect(lake.humidity.jul.text).toBe(valueAt(document, "lake.humidity.jul"));
    const dock = structures.find((each) => each.kind === "dock");
    expect(dock?.replacementCost.text).toBe(valueAt(document, "structures[dock].replacementCost"));
  });
});

describe("a study that leaves out what has a default", () => {
  it("is taken as not infested, without overrides and with prices in dollars", () => {
    const text = editedText([["overrides", []]]).replace(/^overrides: \[\]$/m, "");
    const study = readStudyText(text, "study.yaml");
    expect(study.overrides).toEqual([]);
    expect(study.lake.infestedSince).toBeUndefined();
    expect(study.money.exchangeRate).toBe(1);
    expect(study.lake.calciumScheme).toBe("whittier");
  });
});

describe("the same study in other units", () => {
  it("has the same values", () => {
    const inFeet = readStudyText(editedText([["lake.thermoclineDepth", "30 ft"]]), "study.yaml");
    const inMetres = readStudyText(editedText([["lake.thermoclineDepth", "9.144 m"]]), "study.yaml");
    // 30 ft of 0.3048 m each
    expect(inFeet.lake.thermoclineDepth.value).toBeCloseTo(9.144, 12);
    expect(inMetres.lake.thermoclineDepth.value).toBe(9.144);
  });

  it("takes one value for every month where twelve are rarely known", () => {
    const study = readStudyText(editedText([["structures[ramp].launchesPerDay", 5]]), "study.yaml");
    const ramp = study.structures.find((each) => each.kind === "ramp");
    expect(ramp?.launchesPerDay).toMatchObject({ all: { value: 5 } });
  });
});
