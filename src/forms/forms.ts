import { strToU8, zipSync } from "fflate";
import { reportContext } from "../report/document/context.js";
import { inlineAssets, renderPage, renderReportBody } from "../report/document/html.js";
import { reportView } from "../report/document/report-view.js";
import type { PrintedOdds } from "../report/odds/odds-words.js";
import { wallView } from "../report/papers/wall-view.js";
import { printSettings } from "../report/print/paper.js";
import type { PrintSettings } from "../report/print/pdf.js";
import type { Picture } from "../report/print/pictures.js";
import type { Printer } from "../report/print/printer.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { forXml } from "../study/reading/characters.js";
import { summaryView } from "./summary-view.js";
import { type TableFile, tableFiles, tablesZip, zipDate } from "./tables.js";
import { workbook } from "./workbook/workbook.js";

/** Groups of forms, in the order in which they are listed. */
export const formGroups = ["For a meeting", "For a spreadsheet", "Tables", "Charts"] as const;

/** A study's answer in another form than the report. */
export interface Form {
  /** Also its place in a folder: "tables/budget.csv". */
  readonly path: string;
  readonly group: (typeof formGroups)[number];
  readonly title: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

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

/** What is to be drawn and printed for the other forms. */
export interface FormsToPrint {
  /** The report, for its charts. */
  readonly body: string;
  readonly title: string;
  /** The page for a meeting, and the sheet for the wall; absent where mussels are known already. */
  readonly summary: string;
  readonly wall: string | undefined;
  readonly settings: PrintSettings;
}

/** The same drawn and printed. */
export interface PrintedParts {
  readonly pictures: readonly Picture[];
  readonly letter: Uint8Array;
  readonly a4: Uint8Array;
  readonly wall?: Uint8Array | undefined;
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

/** @throws BrowserError where no browser is found */
export async function printParts(
  { body, title, summary, wall, settings }: FormsToPrint,
  printer: Printer,
): Promise<PrintedParts> {
  const pictures = await printer.draw(body, title);
  const printed = (paper: "letter" | "a4") => printer.print(summary, { ...settings, paper });
  return {
    pictures,
    letter: await printed("letter"),
    a4: await printed("a4"),
    wall: wall === undefined ? undefined : await printer.print(wall, settings),
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
