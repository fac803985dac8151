import type { AssumptionSet } from "../../assumptions/entry.js";
import { applyOverrides, assumedFrom } from "../../assumptions/override.js";
import { exchanged } from "../../assumptions/prices.js";
import { counted } from "../../counted.js";
import { effortOf } from "../../model/risk/detection.js";
import { valueAt } from "../reading/problems.js";
import type { SampleYear } from "./sample-years.js";

/** Years one after the other. */
export interface CleanRun {
  readonly from: number;
  readonly to: number;
}

export interface CleanYears {
  readonly runs: readonly CleanRun[];
  /** Why the other years are not among them, in sentences. */
  readonly told: readonly string[];
}

/**
 * Years in which the lake was watched and nothing was found. The chance is learned as if each were watched with a usual
 * effort: a year with less is left out. Where mussels were found in any year, no year is clean: those before may have had
 * mussels that nobody saw.
 */
export function cleanYears(
  years: readonly SampleYear[],
  document: unknown,
  assumptions: AssumptionSet,
): CleanYears {
  const withFinds = years.filter(({ mussels }) => mussels > 0);
  const infested = valueAt(document, ["lake", "infestedSince"]);
  if (infested !== undefined) return none("The lake is entered as infested, so that no year is clean.");
  if (withFinds.length > 0) {
    const found = withFinds.map(({ year, mussels }) => `${year} (${counted(mussels, "sample")})`).join(", ");
    return none(
      `Mussels were found in ${found}, so that no year is clean: enter lake.infestedSince, or map the word to unconfirmed if later samples did not confirm it.`,
    );
  }
  const assumed = assumedIn(document, assumptions);
  const start = Number(valueAt(document, ["money", "startYear"]) ?? Number.POSITIVE_INFINITY);
  const reasons = new Map(
    years.map((year) => [year.year, reasonAgainst(year, { assumed, start, document })] as const),
  );
  const clean = years.map(({ year }) => year).filter((year) => reasons.get(year) === undefined);
  return {
    runs: runsOf(clean),
    told: [
      ...(clean.length > 0 ? [`${counted(clean.length, "clean year")}: ${runsText(runsOf(clean))}.`] : []),
      ...[...reasons].flatMap(([year, reason]) => (reason ? [`${year} is not added: ${reason}.`] : [])),
    ],
  };
}

const none = (why: string): CleanYears => ({ runs: [], told: [why] });

interface Against {
  readonly assumed: (id: string) => number;
  /** First year of the study. */
  readonly start: number;
  readonly document: unknown;
}

function reasonAgainst(
  { year, counts, unconfirmed }: SampleYear,
  { assumed, start, document }: Against,
): string | undefined {
  if (year >= start) return "it is not before the first year of the study";
  const doubt = `${counted(unconfirmed, "find")} in it stayed unconfirmed`;
  if (isEntered(document, year))
    return `it is in the study’s clean years already${unconfirmed > 0 ? `, though ${doubt}` : ""}`;
  if (unconfirmed > 0) return doubt;
  const effort = effortOf(counts, assumed);
  if (effort >= 1) return undefined;
  const usual = `${assumed("detection.usual-tows")} plankton tows`;
  return `its samples are worth ${Math.floor(effort * 100)} % of a usual effort, ${usual}`;
}

/** Values of assumptions, the study's own first, as far as it can be read. */
function assumedIn(document: unknown, assumptions: AssumptionSet): (id: string) => number {
  const overrides = valueAt(document, ["overrides"]);
  const given = (Array.isArray(overrides) ? overrides : []).flatMap((each: unknown) => {
    const [id, value] = [valueAt(each, ["id"]), valueAt(each, ["value"])];
    const isValue = typeof value === "string" || typeof value === "number";
    return typeof id === "string" && isValue ? [{ id, value, reason: "" }] : [];
  });
  const { applied } = applyOverrides(assumptions, given);
  return assumedFrom(assumptions, applied, exchanged(1));
}

function isEntered(document: unknown, year: number): boolean {
  const periods = valueAt(document, ["boats", "cleanPeriods"]);
  return (Array.isArray(periods) ? periods : []).some(
    (each: unknown) => Number(valueAt(each, ["from"])) <= year && year <= Number(valueAt(each, ["to"])),
  );
}

function runsOf(years: readonly number[]): CleanRun[] {
  const runs: CleanRun[] = [];
  for (const year of years) {
    const last = runs.at(-1);
    if (last && last.to + 1 === year) runs[runs.length - 1] = { from: last.from, to: year };
    else runs.push({ from: year, to: year });
  }
  return runs;
}

const runsText = (runs: readonly CleanRun[]) =>
  runs.map(({ from, to }) => (from === to ? String(from) : `${from} to ${to}`)).join(", ");
