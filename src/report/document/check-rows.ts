import type { EntryCheck, Measure } from "../../model/entries/entry-check.js";
import type { Check, MeasuredCheck } from "../../model/structures/component.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { isConfirmed } from "../../study/reading/confirmed.js";
import type { Problem } from "../../study/reading/problems.js";
import { pathText, valueAt } from "../../study/reading/problems.js";
import type { Implied } from "../../study/traced/implied.js";
import { dimensions } from "../../units/dimensions.js";
import { capitalised, type Formatter, formatter, percent, significant } from "../words/format.js";

/** A check as it is printed; those of an entry say where it stands and what to do. */
export interface CheckRow extends Check {
  readonly place?: string;
  readonly remedy?: string;
  /** That it did not pass and its author found the entry right all the same. */
  readonly confirmed?: true;
}

/** Whether it did not pass, and nobody said that it is right. */
export const isOpen = ({ passed, confirmed }: CheckRow): boolean => !passed && !confirmed;

type Checked = Pick<StudyRun, "comparison" | "document">;

/** All checks of a study, those of its entries in its own units. */
export function checkRows({ comparison, document }: Checked): CheckRow[] {
  const format = formatter(document.money.currency, document.study.units);
  return [
    ...comparison.checks.map((check) => ("measure" in check ? measuredTexts(check, format) : check)),
    ...comparison.entryChecks.map((check) => ({
      ...entryTexts(check, format),
      passed: check.passed,
      place: pathText(check.at, document),
      remedy: check.remedy,
      ...confirmationIn(check, document, format),
    })),
  ];
}

function measuredTexts(check: MeasuredCheck, format: Formatter): Check {
  const { what, found, allowed } = entryTexts(check, format);
  return { what, found, allowed: `${allowed}, ${check.from}`, passed: check.passed };
}

function confirmationIn(
  check: EntryCheck,
  document: StudyDocument,
  format: Formatter,
): Pick<CheckRow, "confirmed"> {
  if (check.passed) return {};
  return isConfirmed(unusualEntry(check, document, format), document, document.study.confirmed)
    ? { confirmed: true }
    : {};
}

/** What is unusual of the entries, as problems at their places that keep nothing from being computed. */
export function unusualEntries({ comparison, document }: Checked): Problem[] {
  const format = formatter(document.money.currency, document.study.units);
  return comparison.entryChecks
    .filter(({ passed }) => !passed)
    .map((check) => unusualEntry(check, document, format));
}

function unusualEntry(check: EntryCheck, document: StudyDocument, format: Formatter): Problem {
  const { what, found, allowed } = entryTexts(check, format);
  return {
    path: pathText(check.at, document),
    at: check.at,
    found: `${what}: ${found}`,
    allowed,
    remedy: check.remedy,
    unusual: true,
  };
}

/** What a study's entries imply, said beside them; what is unusual of it is told as that. */
export function impliedTexts({
  comparison,
  document,
  implied,
}: Checked & { readonly implied: readonly Implied[] }): ImpliedText[] {
  const format = formatter(document.money.currency, document.study.units);
  return [
    ...comparison.entryChecks
      .filter(({ passed }) => passed)
      .map((check) => {
        const { what, found, allowed } = entryTexts(check, format);
        return {
          at: check.at,
          text: `${capitalised(withoutName(what, check.at, document))}: ${found} (usual: ${allowed}).`,
        };
      }),
    ...implied.map((each) => ({ at: each.at, text: `${each.what}: ${impliedText(each, format)}.` })),
  ];
}

export interface ImpliedText {
  readonly at: readonly PropertyKey[];
  readonly text: string;
}

/** Beside a structure's own field its name would be noise. */
function withoutName(what: string, at: readonly PropertyKey[], document: object): string {
  const name: unknown = valueAt(document, [...at.slice(0, 2), "name"]);
  return typeof name === "string" && what.startsWith(`${name}, `) ? what.slice(name.length + 2) : what;
}

function impliedText({ measure, found }: Implied, format: Formatter): string {
  switch (measure) {
    case "megawatts":
      return `${significant(found, 3)} MW`;
    case "days":
      return significant(Math.round(found), 3);
    case "launches":
      return significant(found, 3);
    case "money":
      return format.rate(Number(found.toFixed(2)));
  }
}

function entryTexts(
  check: Pick<EntryCheck, "what" | "measure" | "found" | "low" | "high">,
  format: Formatter,
): Pick<Check, "what" | "found" | "allowed"> {
  const { what, measure, found, low, high } = check;
  const limit = (value: number) => measured(value, measure, format, 2);
  return { what, found: measured(found, measure, format, 3), allowed: rangeText({ low, high }, limit) };
}

function rangeText(
  { low, high }: Pick<EntryCheck, "low" | "high">,
  limit: (value: number) => string,
): string {
  if (low === undefined) return high === undefined ? "anything" : `at most ${limit(high)}`;
  return high === undefined ? `at least ${limit(low)}` : `${limit(low)} to ${limit(high)}`;
}

function measured(value: number, measure: Measure, format: Formatter, digits: number): string {
  if (measure === "share") return percent(value, digits);
  const number = format.display(value, measure);
  if ("money" in dimensions[measure])
    return `${format.rate(Number(number.toPrecision(digits)))}/${format.unit(measure)}`;
  const text = significant(number, digits);
  return measure === "count" ? text : `${text} ${format.unit(measure)}`;
}
