import { readFileSync } from "node:fs";
import { basename, dirname } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import { counted } from "../counted.js";
import { draftOf } from "../editor/draft.js";
import { ownValues } from "../editor/own-value.js";
import { ownValueTable, ownValueText } from "../editor/table/own-value-table.js";
import { ownEffectTable } from "../report/compared/own-effect-view.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { InputError } from "../study/reading/problems.js";
import { parsedStudyFile } from "../study/reading/read.js";
import { decodeStudy } from "../study/reading/study-bytes.js";
import { ownEffects } from "../study/swept/own-effects.js";
import { tableText } from "./table-text.js";
import { writeWhole } from "./write-whole.js";

interface OwnValuesArguments {
  /** A table, or a study whose own values are copied. */
  readonly from: string;
  /** Where the study with the values is written; nothing is written without it. */
  readonly out: string | undefined;
}

/** Shows what a table of own values does to a study's answer, and writes the study with them. @throws InputError */
export function ownValuesCommand(
  path: string,
  { from, out }: OwnValuesArguments,
  print: (text: string) => void,
): void {
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const study = { text: textIn(path), fileName: basename(path) };
  const before = ownValues(draftOf(study.text, study.fileName).document);
  const { lines, problems, text } = ownValueTable(tableIn(from), study, assumptions);
  if (problems.length > 0) {
    const told = problems.map(({ line, ...rest }) => ({
      path: line ? `line ${line}` : "the table",
      ...rest,
    }));
    throw new InputError(basename(from), told);
  }
  const shown = lines.map(({ id, ...line }) => ({ ...line, before: before.get(id)?.value ?? "usual" }));
  const values = lines.map(({ id, value }) => ({ id, value }));
  print(tableText(ownEffectTable(shown, ownEffects(parsedStudyFile(path), values, assumptions))));
  if (out === undefined) {
    print("Nothing was written. With --out FILE the study is written with these values.");
    return;
  }
  writeWhole(out, text);
  print(`${out}: the study with ${counted(lines.length, "own value")} from ${basename(from)}.`);
}

const textIn = (path: string): string => decodeStudy(readFileSync(path), basename(path));

const tableIn = (path: string): string =>
  /\.(ya?ml|json)$/i.test(path)
    ? ownValueText(ownValues(draftOf(textIn(path), basename(path)).document))
    : textIn(path);
