import { dirname } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import { methodPrintSettings, renderMethod, renderMethodBody } from "../method/method-document.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { inlineAssets } from "../report/document/render-page.js";
import { createPrinter } from "../report/print/printer.js";
import { runStudy } from "../study/prepare/compute.js";
import { readStudyFile } from "../study/reading/read.js";
import { documentEnding } from "./document-ending.js";
import { writeWhole } from "./write-whole.js";

interface MethodArguments {
  readonly out: string;
  readonly paper: "letter" | "a4" | undefined;
}

/** Writes the method document, with the worked sheets of a study if one is given. */
export async function methodCommand(
  path: string | undefined,
  { out, paper }: MethodArguments,
  print: (text: string) => void,
): Promise<void> {
  const ending = documentEnding(out);
  const assumptions = loadAssumptions(assumptionsFolder, path === undefined ? undefined : dirname(path));
  const run = path === undefined ? undefined : runStudy(readStudyFile(path), assumptions);
  const settings = methodPrintSettings(run);
  const printer = createPrinter();
  try {
    const content =
      ending === ".html"
        ? renderMethod(assumptions, inlineAssets(), {}, run)
        : await printer.print(renderMethodBody(assumptions, run), {
            ...settings,
            paper: paper ?? settings.paper,
          });
    writeWhole(out, content);
  } finally {
    await printer.close();
  }
  print(`Wrote ${out}`);
}
