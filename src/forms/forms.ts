import { strToU8, zipSync } from "fflate";
import { reportContext } from "../report/document/context.js";
import { renderReportBody } from "../report/document/html.js";
import { inlineAssets, renderPage } from "../report/document/render-page.js";
import { reportView } from "../report/document/report-view.js";
import type { PrintedOdds } from "../report/odds/odds-words.js";
import { wallView } from "../report/papers/wall-view.js";
import { printSettings } from "../report/print/paper.js";
import type { Picture } from "../report/print/pictures.js";
import type { Printer } from "../report/print/printer.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { forXml } from "../study/reading/characters.js";
import type { Form } from "./form.js";
import { type FormsToPrint, type PrintedParts, printParts } from "./print-parts.js";
import { summaryView } from "./summary-view.js";
import { type TableFile, tableFiles, tablesZip, zipDate } from "./tables.js";
import { workbook } from "./workbook/workbook.js";

export interface FormParts {
  readonly run: StudyRun;
  readonly printedOdds: PrintedOdds | undefined;
  readonly edition: string;
}

const wallTitle = "A sheet for the wall: the first 72 hours after a suspected find";

/** The forms that need no browser. */
export async function plainForms({ run, printedOdds, edition }: FormParts): Promise<Form[]> {
  const tables = tableFiles(reportView(run, printedOdds));
  const wall = wallView(reportContext(run, printedOdds?.odds));
  const summary = renderPage("summary", {
    ...summaryView(run, printedOdds, edition),
    assets: inlineAssets(),
    links: {},
  });
  return [
    page("summary.html", "One page for a public meeting, as a web page", summary),
    ...(wall
      ? [
          page(
            "wall-sheet.html",
            wallTitle,
            renderPage("wall", { ...wall, assets: inlineAssets(), links: {} }),
          ),
        ]
      : []),
    {
      path: "workbook.xlsx",
      group: "For a spreadsheet",
      title:
        "Workbook that follows its inputs: answer, inputs, cost by year, cost lines, chances, budget, assumptions",
      type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      bytes: await workbook(run, printedOdds?.odds),
    },
    zip("tables.zip", "Tables", "All tables of the report as CSV, in one file", tablesZip(tables)),
    ...tables.map(tableForm),
  ];
}

export function formsToPrint({ run, printedOdds, edition }: FormParts): FormsToPrint {
  const wall = wallView(reportContext(run, printedOdds?.odds));
  return {
    body: renderReportBody(run, printedOdds),
    title: run.document.study.name,
    summary: forXml(renderPage("partials/summary-body", summaryView(run, printedOdds, edition))),
    wall: wall && forXml(renderPage("partials/wall", wall)),
    settings: printSettings(run.document, edition),
  };
}

/** The forms for which charts are drawn or pages printed. @throws BrowserError where no browser is found */
export async function printedForms(parts: FormParts, printer: Printer): Promise<Form[]> {
  return formsOfPrints(await printParts(formsToPrint(parts), printer));
}

export function formsOfPrints({ pictures, letter, a4, wall }: PrintedParts): Form[] {
  return [
    ...(wall ? [pdfForm("wall-sheet.pdf", `${wallTitle}, to print`, wall)] : []),
    summaryPdf("letter", letter),
    summaryPdf("a4", a4),
    zip(
      "charts.zip",
      "Charts",
      "All charts as SVG and PNG, and the board’s pictures as PNG, in one file",
      picturesZip(pictures),
    ),
    ...pictures.flatMap(pictureForms),
  ];
}

const pdfForm = (path: string, title: string, bytes: Uint8Array): Form => ({
  path,
  group: "For a meeting",
  title,
  type: "application/pdf",
  bytes,
});

const summaryPdf = (paper: "letter" | "a4", bytes: Uint8Array): Form =>
  pdfForm(
    `summary-${paper}.pdf`,
    `One page for a public meeting, to print on ${paper === "letter" ? "letter paper" : "A4"}`,
    bytes,
  );

const page = (path: string, title: string, html: string): Form => ({
  path,
  group: "For a meeting",
  title,
  type: "text/html; charset=utf-8",
  bytes: strToU8(forXml(html)),
});

const zip = (path: string, group: Form["group"], title: string, bytes: Uint8Array): Form => ({
  path,
  group,
  title,
  type: "application/zip",
  bytes,
});

const tableForm = ({ fileName, caption, csv }: TableFile): Form => ({
  path: `tables/${fileName}`,
  group: "Tables",
  title: caption,
  type: "text/csv; charset=utf-8",
  bytes: strToU8(csv),
});

function pictureForms({ name, title, svg, png }: Picture): Form[] {
  const form = { group: "Charts", title } as const;
  return [
    ...(svg === undefined
      ? []
      : [{ ...form, path: `charts/${name}.svg`, type: "image/svg+xml", bytes: strToU8(forXml(svg)) }]),
    { ...form, path: `charts/${name}.png`, type: "image/png", bytes: png },
  ];
}

function picturesZip(pictures: readonly Picture[]): Uint8Array {
  const entries = pictures.flatMap(({ name, svg, png }) => [
    ...(svg === undefined ? [] : [[`${name}.svg`, strToU8(forXml(svg))] as const]),
    [`${name}.png`, png] as const,
  ]);
  return zipSync(Object.fromEntries(entries), { mtime: zipDate });
}
