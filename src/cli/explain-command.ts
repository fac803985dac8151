import { dirname } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import type { WorkedExample } from "../method/worked-example.js";
import { askedExamples } from "../method/worked-sheets.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { monthNames } from "../study/format/month-names.js";
import { runStudy } from "../study/prepare/compute.js";
import { readStudyFile } from "../study/reading/read.js";
import { UsageError } from "./arguments.js";
import { tableText } from "./table-text.js";

interface ExplainArguments {
  /** Id of a structure. */
  readonly part: string | undefined;
  /** "jul" */
  readonly month: string | undefined;
}

/** Prints one month of one structure, from what was entered to what it costs, with every number that is used. */
export function explainCommand(
  path: string,
  { part, month }: ExplainArguments,
  print: (text: string) => void,
): void {
  const names: readonly string[] = monthNames;
  const place = month === undefined ? undefined : names.indexOf(month.toLowerCase());
  if (place === -1) {
    throw new UsageError(`--month has "${month}"; allowed: ${monthNames.join(", ")}.`);
  }
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const run = runStudy(readStudyFile(path), assumptions);
  const { structures, worked } = askedExamples(run, { structure: part, month: place });
  if (part !== undefined && !structures.some(({ id }) => id === part)) {
    const known = structures.map(({ id }) => id).join(", ");
    throw new UsageError(`--part has "${part}"; allowed: ${known || "none, as no structure has a pipe"}.`);
  }
  if (worked.examples.length === 0) {
    print("This study has no intake or power plant with a pipe: there is nothing to work step by step.");
    return;
  }
  print([...worked.examples.flatMap(exampleText), worked.note].join("\n"));
}

const cell = (text: string) => ({ text: plain(text), numeric: false });
const line = (cells: readonly string[]) => ({ cells: cells.map(cell) });

function exampleText({
  title,
  intro,
  outcome,
  given,
  cohorts,
  groups,
  hasStudyUnits,
}: WorkedExample): string[] {
  const unit = hasStudyUnits ? ["In the study's units"] : [];
  const own = (text: string) => (hasStudyUnits ? [text] : []);
  const table = (caption: string, head: readonly string[], rows: readonly (readonly string[])[]) =>
    rows.length === 0 ? [] : [tableText({ id: "", caption, head: head.map(cell), rows: rows.map(line) })];
  return [
    ...[title, intro, outcome, ""],
    ...table(
      "Given",
      ["Symbol", "Meaning", "As entered, or origin", "Value", "Unit", ...unit],
      given.map((each) => [
        each.symbol,
        each.meaning,
        each.entered,
        each.value,
        each.unit,
        ...own(each.inStudyUnit),
      ]),
    ),
    ...table(
      "Cohorts through the month",
      [
        "Age at its end, months",
        "Mussels at its start, 1/m²",
        "At its end, N",
        "Length L, mm",
        "Mass of one W, kg",
      ],
      cohorts,
    ),
    ...groups.flatMap((group) =>
      table(
        group.title,
        ["Step", "In symbols", "With numbers", "Result", "Unit", ...unit],
        group.steps.map((each) => [
          ...[each.name, each.formula, each.substitution, each.resultText, each.unit],
          ...own(each.inStudyUnit),
        ]),
      ),
    ),
  ];
}

/** The text of a piece of HTML. */
const plain = (html: string): string =>
  html
    .replaceAll(/<sup>(.*?)<\/sup>/g, (_, power: string) => `^${bracketed(power)}`)
    .replaceAll(/<span class="under-root">(.*?)<\/span>/g, (_, under: string) => bracketed(under))
    .replaceAll(tags, "")
    .replaceAll("&amp;", "&")
    .replaceAll("&nbsp;", " ");

const tags = /<[^>]*>/g;

/** What is raised or under a root, in brackets where it is more than a number or a symbol. */
function bracketed(html: string): string {
  const text = html.replaceAll(tags, "");
  return /^−?[\p{L}\d.,]+$/u.test(text) ? text : `(${text})`;
}
