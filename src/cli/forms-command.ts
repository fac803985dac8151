import { mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import type { Form } from "../forms/form.js";
import { type FormParts, plainForms, printedForms } from "../forms/forms.js";
import { sizeText } from "../forms/size.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { printableOdds } from "../report/odds/printed-odds.js";
import { editionText } from "../report/print/paper.js";
import { createPrinter } from "../report/print/printer.js";
import { readStudyFile } from "../study/reading/read.js";
import { runWithOdds } from "./odds-command.js";
import { writeWhole } from "./write-whole.js";

/** Writes every other form of a study's answer into a folder, made if need be, and prints what stands in it. */
export async function formsCommand(
  path: string,
  { out }: { readonly out: string },
  print: (text: string) => void,
): Promise<void> {
  const document = readStudyFile(path);
  const printer = createPrinter();
  printer.warm();
  try {
    const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
    const { run, odds } = await runWithOdds(document, assumptions);
    const printedOdds = printableOdds(run, odds);
    const parts: FormParts = { run, printedOdds, edition: editionText() };
    const forms = [...(await plainForms(parts)), ...(await printedForms(parts, printer))];
    for (const form of forms) writeForm(out, form);
    print(forms.map(({ path: file, bytes }) => `${join(out, file)}  ${sizeText(bytes.length)}`).join("\n"));
  } finally {
    await printer.close();
  }
}

function writeForm(folder: string, { path, bytes }: Form): void {
  const target = join(folder, path);
  mkdirSync(dirname(target), { recursive: true });
  writeWhole(target, bytes);
}
