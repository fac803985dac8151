import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { assumptionFiles, readAssumptions } from "../../src/assumptions/load.js";
import { alterationsOf, recordOf, shippedRecord } from "../../src/assumptions/shipped.js";
import { programVersion } from "../../src/assumptions/version.js";
import { workbook } from "../../src/forms/workbook/workbook.js";
import { renderReportBody } from "../../src/report/document/html.js";
import { resultsJson } from "../../src/report/results/results.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { exampleDocument } from "../report/runs.js";
import { assumptionsFolder, realSet } from "./real.js";

const files = assumptionFiles(assumptionsFolder);

/** The project's folder with one text replaced in one of its files. */
function altered(file: string, from: string, to: string) {
  const text = files.get(file) ?? "";
  expect(text).toContain(from);
  return readAssumptions(new Map([...files, [file, text.replace(from, to)]]));
}

const certain = () =>
  altered(
    "arrival.yaml",
    "value: 0.11, unit: share, low: 0.05, high: 0.4",
    "value: 0.5, unit: share, low: 0.05, high: 0.9",
  );
const chance = "assumption arrival.other-share";

describe("the record of what is shipped", () => {
  it("is that of the folder: if not, run `npm run ship`", () => {
    expect(recordOf(realSet())).toEqual(shippedRecord());
    expect(realSet().alterations).toEqual([]);
  });

  // Semantic Versioning 2.0.0, section 10: build metadata follow a plus sign and are of letters, digits and hyphens.
  it("is in the version of the program", () => {
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect(programVersion()).toBe(`${version}+${shippedRecord().digest}`);
    expect(programVersion()).toMatch(/^\d+\.\d+\.\d+\+[0-9A-Za-z-]+$/);
  });
});

describe("a folder of assumptions that was altered", () => {
  it.each([
    [certain, chance, "0.5 share (0.05 to 0.9), judged", "0.11 share (0.05 to 0.4), judged"],
    [() => altered("sources.yaml", "read: abstract", "read: text"), "source ", "the same value", ""],
    [
      () => altered("protection-plans.yaml", "name: left as it is", "name: left alone"),
      "protection plan leave",
      "left alone",
      "left as it is",
    ],
  ])("shows what was altered, here and as shipped", (alter, what, found, shipped) => {
    const set = alter();
    expect(set.alterations).toHaveLength(1);
    const [first] = set.alterations;
    expect(first?.what).toContain(what);
    expect(first?.found).toContain(found);
    expect(first?.shipped).toContain(shipped);
    expect(recordOf(set).digest).not.toBe(shippedRecord().digest);
  });

  it("shows what is missing and what is more", () => {
    const set = realSet();
    const { [chance]: left, ...parts } = shippedRecord().parts;
    expect(alterationsOf(set, { digest: "", parts })).toEqual([
      { what: chance, found: left?.shown, shipped: "nothing" },
    ]);
    const more = { ...shippedRecord().parts, "source gone": { shown: "A book", digest: "" } };
    expect(alterationsOf(set, { digest: "", parts: more })).toEqual([
      { what: "source gone", found: "nothing", shipped: "A book" },
    ]);
  });

  it("is listed in the report, on page 1 too, in the workbook and in the results", async () => {
    const run = runStudy(exampleDocument("ninemoss"), certain());
    const report = renderReportBody(run);
    expect(report).toContain(`altered in the program’s own folder, ${chance}; expected`);
    expect(report).toContain(
      `Not as version ${programVersion().replace("+", "&#43;")}`.replace("&#43;", "+"),
    );
    expect(report).toContain("0.5 share (0.05 to 0.9), judged");
    const sheets = Object.values(unzipSync(await workbook(run))).map((bytes) => strFromU8(bytes));
    expect(sheets.join()).toContain("0.5 share (0.05 to 0.9), judged");
    expect(resultsJson(run, undefined)).toMatchObject({ alteredAssumptions: [{ what: chance }] });
  });

  it("is not spoken of where nothing was altered", () => {
    const run = runStudy(exampleDocument("ninemoss"), realSet());
    expect(renderReportBody(run)).not.toContain("altered in the program’s own folder");
    expect(resultsJson(run, undefined)).toMatchObject({ alteredAssumptions: [] });
  });
});
