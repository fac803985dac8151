import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDict, PDFDocument, PDFName } from "@cantoo/pdf-lib";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { renderReportBody } from "../../src/report/document/html.js";
import { printSettings } from "../../src/report/print/paper.js";
import { createPrinter, type Printer } from "../../src/report/print/printer.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { actualTexts, drawings } from "./pdf-pages.js";
import { assumptions, exampleDocument } from "./runs.js";

/** Names that a study may bear; each script has its own face. */
const names = {
  emoji: "🚢⚓",
  Arabic: "بحيرة",
  Hebrew: "אגם",
  Cyrillic: "Озеро",
  Greek: "Λίμνη",
  "Latin of Central Europe": "Łódź",
};

const folder = mkdtempSync(join(tmpdir(), "no-fonts-"));
let printer: Printer;

beforeAll(() => {
  const settings = join(folder, "fonts.conf");
  writeFileSync(settings, `<fontconfig><cachedir>${folder}</cachedir></fontconfig>`);
  // As on a bare machine: what reads fontconfig finds no font at all.
  vi.stubEnv("FONTCONFIG_FILE", settings);
  printer = createPrinter();
});
afterAll(async () => {
  await printer.close();
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

describe("names in other scripts, printed where no font is installed", () => {
  it("are there to read and drawn by fonts that the report brings", async () => {
    const document = exampleDocument("ninemoss");
    const structures = document.structures.map((structure, index) => ({
      ...structure,
      name: `${Object.values(names)[index % 6]} ${index}`,
    }));
    const study = { ...document.study, name: Object.values(names).join(" ") };
    const named = { ...document, study, structures };
    const body = renderReportBody(runStudy(named, assumptions), undefined, { part: "board" });
    const pdf = await printer.print(body, printSettings(named));
    const { text } = await extractText(await getDocumentProxy(pdf.slice()), { mergePages: true });
    const stated = drawings(await PDFDocument.load(pdf)).flatMap(actualTexts);
    const readable = new Set([...text.normalize("NFKC"), ...stated]);
    for (const name of Object.values(names)) {
      expect([...name].filter((letter) => !readable.has(letter))).toEqual([]);
    }
    const fonts = await fontNames(pdf);
    expect(fonts.filter((font) => !/\+(Source|Noto)/.test(font))).toEqual([]);
    for (const font of ["NotoEmoji", "NotoSansArabic", "NotoSansHebrew"]) {
      expect(fonts.some((each) => each.includes(font))).toBe(true);
    }
  });

  it("cost a report without them nothing", async () => {
    const document = exampleDocument("ninemoss");
    const body = renderReportBody(runStudy(document, assumptions), undefined, { part: "board" });
    const fonts = await fontNames(await printer.print(body, printSettings(document)));
    expect(fonts.filter((font) => /Emoji|Arabic|Hebrew/.test(font))).toEqual([]);
    expect(fonts.filter((font) => !/\+(Source|Noto)/.test(font))).toEqual([]);
  });
});

/** Fonts of a PDF by name; a Type 3 font has none, and is what a slanted or emboldened face becomes. */
async function fontNames(pdf: Uint8Array): Promise<string[]> {
  const { context } = await PDFDocument.load(pdf);
  return context.enumerateIndirectObjects().flatMap(([, object]) => {
    if (!(object instanceof PDFDict) || object.get(PDFName.of("Type")) !== PDFName.of("Font")) return [];
    const name = object.lookupMaybe(PDFName.of("BaseFont"), PDFName)?.asString();
    return name === undefined ? [] : [name];
  });
}
