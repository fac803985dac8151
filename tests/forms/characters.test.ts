import { strFromU8, unzipSync } from "fflate";
import { readXlsx } from "hucre";
import { beforeAll, describe, expect, it } from "vitest";
import { formsOfPrints, formsToPrint, plainForms } from "../../src/forms/forms.js";
import { workbook } from "../../src/forms/workbook/workbook.js";
import { renderReportBody } from "../../src/report/document/html.js";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { readIssuedText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { exampleDocument, put } from "../study/example.js";

/** A bell, half a character, and what is no character: https://www.w3.org/TR/xml/#charsets allows none of them. */
const hostile = "Nort\u0007h\ud800 Bay\ufffe";
const safe = "Nort\ufffdh\ufffd Bay\ufffd";
const notChar = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;

const edition = "board part";

function hostileRun(): StudyRun {
  const document = exampleDocument();
  for (const place of ["study.name", "study.preparedBy", "lake.name", "options[full-season].name"])
    put(document, place, hostile);
  return runStudy(readIssuedText(JSON.stringify(document), "lake.json"), assumptions);
}

describe("names that XML cannot hold", () => {
  let run: StudyRun;
  beforeAll(() => {
    run = hostileRun();
  });

  it("leave a workbook well-formed", async () => {
    const forms = await plainForms({ run, printedOdds: undefined, edition });
    const file = forms.find(({ path }) => path === "workbook.xlsx")?.bytes ?? expect.fail();
    const parts = Object.entries(unzipSync(file)).filter(([name]) => /\.(xml|rels)$/.test(name));
    expect(parts.length).toBeGreaterThan(5);
    for (const [name, bytes] of parts) expect(notChar.exec(strFromU8(bytes))?.index, name).toBeUndefined();
    const { sheets } = await readXlsx(file);
    expect(sheets.flatMap(({ rows }) => rows.flat()).join()).toContain(safe);
  });

  it("may look like a code of a workbook, and stay as they are", async () => {
    const document = exampleDocument();
    put(document, "options[full-season].name", "Bay _x0041_ and _x0007_");
    const file = await workbook(runStudy(readIssuedText(JSON.stringify(document), "lake.json"), assumptions));
    const { sheets } = await readXlsx(file);
    expect(sheets.flatMap(({ rows }) => rows.flat())).toContain("Bay _x0041_ and _x0007_");
  });

  it("come into no table, page or report", async () => {
    const forms = await plainForms({ run, printedOdds: undefined, edition });
    const texts = forms.filter(({ path }) => /\.(csv|html)$/.test(path));
    expect(texts.some(({ bytes }) => strFromU8(bytes).includes(safe))).toBe(true);
    for (const { path, bytes } of texts) expect(notChar.test(strFromU8(bytes)), path).toBe(false);
    const { body, summary } = formsToPrint({ run, printedOdds: undefined, edition });
    for (const html of [body, summary, renderReportBody(run)]) expect(notChar.test(html)).toBe(false);
  });

  it("come into no picture", () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg"><text>${hostile}</text></svg>`;
    const picture = { name: "yearly", title: hostile, alternative: hostile, svg, png: new Uint8Array() };
    const none = new Uint8Array();
    const forms = formsOfPrints({ pictures: [picture], letter: none, a4: none });
    const drawn = forms.find(({ path }) => path === "charts/yearly.svg")?.bytes ?? none;
    expect(strFromU8(drawn)).toContain(safe);
    const zipped = unzipSync(forms.find(({ path }) => path === "charts.zip")?.bytes ?? none);
    expect(strFromU8(zipped["yearly.svg"] ?? none)).toContain(safe);
  });
});
