import { getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Form } from "../../src/forms/form.js";
import { plainForms, printedForms } from "../../src/forms/forms.js";
import { editionText } from "../../src/report/print/paper.js";
import { createPrinter } from "../../src/report/print/printer.js";
import { editedRun } from "../report/edited.js";
import { exampleRun } from "../report/runs.js";

const printer = createPrinter();
afterAll(() => printer.close());

const long = `Lake <b>Überlänge</b> & ${"Wasserwerksverwaltung".repeat(4)} שלום 🐚`;
const edition = editionText({ revision: 3 });

async function formsOf(run: ReturnType<typeof exampleRun>): Promise<(path: string) => Form> {
  const parts = { run, printedOdds: undefined, edition };
  const forms = [...(await plainForms(parts)), ...(await printedForms(parts, printer))];
  return (path) => {
    const form = forms.find((each) => each.path === path);
    if (!form) throw new Error(`no form ${path}`);
    return form;
  };
}

const textOf = ({ bytes }: Form) => new TextDecoder().decode(bytes);

async function pagesOf({ bytes }: Form): Promise<number> {
  const document = await getDocumentProxy(new Uint8Array(bytes));
  return document.numPages;
}

describe.each([
  ["an example", () => exampleRun("ninemoss")],
  [
    "long and hostile names",
    () =>
      editedRun([
        ["study.name", long],
        ["lake.name", long],
        ["options.2.name", long],
      ]),
  ],
] as const)("the forms of %s", (_name, make) => {
  let form: Awaited<ReturnType<typeof formsOf>>;

  beforeAll(async () => {
    form = await formsOf(make());
  });

  it("put the summary for a public meeting on one page of letter and of A4", async () => {
    expect(await pagesOf(form("summary-letter.pdf"))).toBe(1);
    expect(await pagesOf(form("summary-a4.pdf"))).toBe(1);
    expect(await pagesOf(form("wall-sheet.pdf"))).toBe(1);
  });

  it("have charts as SVG that stand by themselves and as PNG of at least 300 dots to the inch", async () => {
    const svg = textOf(form("charts/yearly.svg"));
    expect(svg.includes(' xmlns="http://www.w3.org/2000/svg"')).toBe(true);
    expect(/<title>[^<]+<\/title><desc>[^<]+<\/desc>/.test(svg)).toBe(true);
    expect(/class=| href="http/.test(svg)).toBe(false);
    const png = form("charts/yearly.png").bytes;
    const width = new DataView(png.buffer, png.byteOffset).getUint32(16);
    // 656 pixels of a page are 6.83 inches.
    expect(width / (656 / 96)).toBeGreaterThanOrEqual(300);
  });

  it("have the board's own pictures as PNG, and its drawings with the type of the page", () => {
    for (const name of ["budget", "structures", "waterfall"]) {
      expect(form(`charts/${name}.png`).bytes.length).toBeGreaterThan(10_000);
    }
    const svg = textOf(form("charts/schematic.svg"));
    expect(/font-size="\d/.test(svg)).toBe(true);
  });
});
