import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, describe, expect, it } from "vitest";
import { tableFiles } from "../../../src/forms/tables.js";
import { at } from "../../../src/lists.js";
import { renderReportBody } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { printSettings } from "../../../src/report/print/paper.js";
import { createPrinter } from "../../../src/report/print/printer.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { hostileName } from "../hostile-names.js";
import { assumptions, exampleDocument, exampleRun } from "../runs.js";
import { sampleTold } from "../sample-odds.js";
import { brokenTexts } from "./text-boxes.js";

const printer = createPrinter();
afterAll(() => printer.close());

const document = exampleDocument("sorrel-bend");

/** Sorrel Bend's structures over and over, its lake-wide duties once. */
function structuresOf(count: number): StudyDocument["structures"] {
  const built = document.structures.filter(({ kind }) => kind !== "lake-wide");
  const duties = document.structures.filter(({ kind }) => kind === "lake-wide");
  const copies = Array.from({ length: count - duties.length }, (_, place) => at(built, place % built.length));
  return [...duties, ...copies].map((each, place) => ({
    ...each,
    id: `${each.id}-${place}`,
    name: hostileName(place),
  }));
}

const count = 150;
const many = { ...document, structures: structuresOf(count) };
const run = runStudy(many, assumptions);
const odds = sampleTold("sorrel-bend");

const pagesOf = async (pdf: Uint8Array): Promise<string[]> => {
  const { text } = await extractText(await getDocumentProxy(pdf.slice()));
  return text.map((page) => page.replace(/\s+/g, " "));
};

/** A board reads no more: the brief for this report. */
const most = { boardPages: 6, boardNumbers: 350 };
/** Of the report with every appendix; 95 pages had every line of every structure. */
const mostPages = 50;
const fewestWords = 60;

describe("a report on 150 structures with hostile, long and right-to-left names", () => {
  it("keeps its board's part to six pages and 350 numbers, nothing cut and nothing overlapping", async () => {
    const pdf = await printer.print(renderReportBody(run, odds, { part: "board" }), printSettings(many));
    const pages = await pagesOf(pdf);
    expect(pages).toHaveLength(most.boardPages);
    expect(pages.join(" ").match(/\d[\d.,]*/g)?.length).toBeLessThanOrEqual(most.boardNumbers);
    expect(await brokenTexts(pdf)).toEqual([]);
  });

  it("tells the dearest in its appendices, and says where the others are", async () => {
    const pdf = await printer.print(renderReportBody(run, odds), printSettings(many));
    const pages = await pagesOf(pdf);
    expect(pages.length).toBeLessThanOrEqual(mostPages);
    for (const page of pages) expect(page.split(" ").length).toBeGreaterThan(fewestWords);
    expect(await brokenTexts(pdf)).toEqual([]);
    const text = pages.join(" ");
    expect(text).toContain("135 other structures together");
    expect(text).toContain("90 more are in the tables as files, every-register.csv");
    expect(text.replace(/\s/g, "")).toContain(hostileName(9));
  });

  it("has every structure in the tables as files", () => {
    const files = new Map(tableFiles(reportView(run)).map(({ fileName, csv }) => [fileName, csv]));
    for (const name of ["every-line.csv", "every-register.csv", "every-structure.csv"]) {
      const told = files.get(name)?.replaceAll('""', '"') ?? "";
      expect(many.structures.filter((each) => !told.includes(each.name)).map((each) => each.name)).toEqual(
        [],
      );
    }
    expect(files.get("every-pipes.csv")).toContain(hostileName(127));
  });

  it("leaves a study of few structures as it is, with one table of each kind", () => {
    const names = tableFiles(reportView(exampleRun("sorrel-bend"))).map(({ fileName }) => fileName);
    expect(names.filter((name) => name.startsWith("every-"))).toEqual([]);
  });
});

describe("names of options and schedules in charts", () => {
  it("stand whole in the key below each chart, whatever their length and script", async () => {
    const options = document.options.map((option, place) => ({
      ...option,
      name: hostileName([1, 2, 5, 3][place] ?? 7),
    }));
    const otherSchedules = document.lake.otherSchedules.map((each, place) => ({
      ...each,
      name: hostileName(place + 1),
    }));
    const named = { ...document, options, lake: { ...document.lake, otherSchedules } };
    const renamed = {
      ...odds.odds,
      options: odds.odds.options.map((each) => ({
        ...each,
        name: options.find(({ id }) => id === each.id)?.name ?? "",
      })),
    };
    const body = renderReportBody(runStudy(named, assumptions), { ...odds, odds: renamed });
    const pdf = await printer.print(body, printSettings(named));
    expect(await brokenTexts(pdf)).toEqual([]);
    const text = (await pagesOf(pdf)).join("").replace(/\s/g, "");
    expect(text).toContain(`${hostileName(1)}:median`);
  });
});

describe("the search for texts that run into each other", () => {
  it("finds them", async () => {
    const at = (left: number, text: string) =>
      `<p style="position: absolute; left: ${left}px; top: 9px; margin: 0">${text}</p>`;
    const body = `<section>${at(40, "Spillway gates")}${at(50, "Fish ladder")}${at(400, "Weir")}</section>`;
    const pdf = await printer.print(body, printSettings(document));
    expect(await brokenTexts(pdf)).toEqual([expect.stringMatching(/Spillway gates \| Fish ladder/)]);
  });
});
