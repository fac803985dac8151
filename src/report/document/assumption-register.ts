import type { Assumption } from "../../assumptions/entry.js";
import type { AppliedOverride } from "../../assumptions/override.js";
import type { Sensitivity } from "../../study/odds/odds.js";
import { rangeText, statedNumber, unitText } from "../words/assumption-text.js";
import { ownIn, usualIn } from "../words/usual-and-own.js";
import { type ReportContext, studyUnits } from "./context.js";

/** An assumption in one line. */
export interface RegisterLine {
  /** "A12" */
  readonly number: string;
  readonly name: string;
  /** Value, range, unit, basis, source. */
  readonly text: string;
}

/** Assumptions in one line each: the workbook and the tables as files have their notes. */
export function registerLines(entries: readonly Assumption[], context: ReportContext): RegisterLine[] {
  const own = new Map(context.run.overrides.map((override) => [override.entry.id, override]));
  return entries.map((entry) => ({
    number: context.assumptionNumber(entry.id),
    name: entry.id,
    text: lineText(entry, own.get(entry.id), context),
  }));
}

function lineText(entry: Assumption, own: AppliedOverride | undefined, context: ReportContext): string {
  if (!own) return `${valueText(entry)}, ${originOf(entry)}`;
  const units = studyUnits(context);
  const { value, range } = usualIn(entry, units);
  return `${ownIn(own, units)}, own, in place of ${value}${range === "" ? "" : ` (${range})`}`;
}

function valueText(entry: Assumption): string {
  const { value, low, high } = entry;
  const range = low === high ? "" : `(${rangeText(entry)})`;
  return [statedNumber(value), range, unitText(entry)].filter(Boolean).join(" ");
}

/** What is judged without any source names none. */
const originOf = ({ basis, source }: Assumption) =>
  source === "project-judgement" ? basis : `${basis} [${source}]`;

/** Assumptions whose ids differ in their last word alone, under the words that they share. */
export interface RegisterFamily {
  readonly name: string;
  readonly members: ReadonlyArray<{ readonly number: string; readonly text: string }>;
}

/** By family, each basis and source once for neighbours that share them; "judged" alone where the project judged. */
export function registerFamilies(entries: readonly Assumption[], context: ReportContext): RegisterFamily[] {
  const own = new Map(context.run.overrides.map((override) => [override.entry.id, override]));
  const familyOf = ({ id }: Assumption) => id.slice(0, id.lastIndexOf("."));
  return [...new Set(entries.map(familyOf))].map((name) => ({
    name,
    members: entries
      .filter((entry) => familyOf(entry) === name)
      .map((entry, index, family) => {
        const next = family[index + 1];
        const goesOn = next !== undefined && originOf(next) === originOf(entry) && !own.has(entry.id);
        const word = entry.id.slice(name.length + 1);
        return {
          number: context.assumptionNumber(entry.id),
          text: `${word} ${goesOn ? valueText(entry) : lineText(entry, own.get(entry.id), context)}`,
        };
      }),
  }));
}

/** Assumptions that the comparison read, in the order of their numbers. */
export function usedEntries({ run }: ReportContext): Assumption[] {
  return [...run.usedAssumptions].sort().flatMap((id) => run.assumptions.entries.get(id) ?? []);
}

/** Limits of checks move no figure. */
export const movesFigures = ({ id }: Assumption): boolean => id.split(".")[0] !== "checks";

const mostShown = 15;

/** Of the assumptions used, those by which the net benefit moves most, the first of them; all own values among them. */
export function decisiveEntries(context: ReportContext, matters: Sensitivity | undefined): Assumption[] {
  const own = context.run.overrides.map(({ entry }) => entry.id);
  const moving = (matters?.tornado ?? []).flatMap(({ id, members }) => members ?? [id]);
  const used = new Set(context.run.usedAssumptions);
  return [...new Set([...moving, ...own])]
    .filter((id) => used.has(id))
    .flatMap((id) => context.run.assumptions.entries.get(id) ?? [])
    .slice(0, mostShown);
}
