import type { AssumptionSet } from "../../assumptions/entry.js";
import { counted } from "../../counted.js";
import { at, sumOf } from "../../lists.js";
import type { ProgramOption, Traffic } from "../../model/inputs.js";
import { efficient, type Taken } from "../../model/search/choices.js";
import type { YearShare } from "../../model/search/evaluate.js";
import type { SearchedProgram } from "../../model/search/lake-terms.js";
import type { Measure, Variant } from "../../model/search/variant.js";
import type { StudyDocument } from "../format/schema.js";
import { type PreparedStudy, prepareStudy } from "../prepare/prepared.js";
import { InputError } from "../reading/problems.js";
import { type Cell, cellsOf } from "./cells.js";
import { type MeasureChoice, measureChoices, measureSets } from "./measures.js";
import { type MonthCell, monthCells } from "./months.js";
import { type SearchRules, searchRules } from "./rules.js";

/** All programs of a study's search: for each set of measures, what may be open and what of it is efficient. */
export interface SearchPlan {
  readonly document: StudyDocument;
  readonly prepared: PreparedStudy;
  readonly rules: SearchRules;
  readonly base: ProgramOption;
  readonly choices: readonly MeasureChoice[];
  readonly sets: readonly SearchedSet[];
  readonly searched: SearchedProgram;
  /** Launches of the year by its traffic, or in the months in which the option is taken to run. */
  readonly launches: number;
  readonly ownYears: readonly YearShare[];
  /** Programs that differ in their hours, of every set together. */
  readonly programs: number;
}

export interface SearchedSet {
  readonly measures: readonly Measure[];
  readonly cells: ReadonlyArray<Cell | MonthCell>;
  readonly ladder: readonly Taken[];
  /** Hours and boats of the option's own opening with these measures. */
  readonly own: Taken;
}

/** @throws InputError where no option has steps to start from, or the lake is infested */
export function searchPlan(
  document: StudyDocument,
  all: AssumptionSet,
  prepared = prepareStudy(document, all),
): SearchPlan {
  const rules = searchRules(document);
  if (!rules || document.lake.infestedSince !== undefined) throw nothingToSearch(document, rules);
  const written = at(document.options, rules.base);
  const base = at(prepared.input.options, rules.base);
  const choices = measureChoices(written, rules);
  const traffic = written.open ? prepared.traffic?.scaled : undefined;
  const cellsWith = remembering((sealed: boolean) =>
    traffic
      ? cellsOf(document, written, traffic, rules, sealed ? (base.steps?.seals ?? []) : [])
      : monthCells(document, rules.varies("hours")),
  );
  const sets = measureSets(choices).map((measures): SearchedSet => {
    const cells = cellsWith(!measures.some(({ withoutSeals }) => withoutSeals));
    return { measures, cells, ladder: efficient(cells), own: ownOf(cells) };
  });
  refuseWait(document, rules, sets);
  const others = prepared.assumptions.entries.get("typical.other-costs");
  const lumpShare = 1 / (1 + (others?.value ?? 0));
  return {
    ...{ document, prepared, rules, base, choices, sets },
    searched: { base: rules.base, sets: sets.map(({ measures }) => measures), lumpShare },
    launches: traffic ? launchesOf(traffic) : at(sets, 0).own.met,
    ownYears: yearsOf(base, prepared.input.money.horizon),
    programs: sumOf(
      sets.map(({ cells }) => cells.reduce((product, { levels }) => product * levels.length, 1)),
    ),
  };
}

function nothingToSearch({ study, lake }: StudyDocument, rules: SearchRules | undefined): InputError {
  const problem = rules
    ? {
        path: "lake.infestedSince",
        found: String(lake.infestedSince),
        allowed: "a lake without mussels, whose chance a program changes",
        remedy: "Let levels vary, or compare protection in the report.",
      }
    : {
        path: "options",
        found: "no option with steps",
        allowed: "at least one option with steps, from which programs start",
        remedy: "Enter the program that is thought of as an option with its steps and costs.",
      };
  return new InputError(study.name, [problem]);
}

/** A wait that is kept nowhere in the hours in which boats come. @throws InputError */
function refuseWait(document: StudyDocument, rules: SearchRules, sets: readonly SearchedSet[]): void {
  const wait = rules.stated?.longestWait;
  const station = at(document.options, rules.base).station;
  const cells = sets.flatMap((set) => set.cells).filter((cell): cell is Cell => "site" in cell);
  const isKept = cells.some(({ levels, own }) =>
    levels.some(({ open, met }, level) => open !== undefined && met > 0 && level !== own),
  );
  if (!wait || !station || isKept || cells.every(({ unkept }) => unkept === 0)) return;
  throw new InputError(document.study.name, [
    {
      path: "search.longestWait",
      at: ["search", "longestWait"],
      found: wait.text,
      allowed: `a wait that some station keeps with at most ${counted(station.mostInspectors, "inspector")}`,
      remedy: "Lengthen it, or let the station have more inspectors.",
    },
  ]);
}

function remembering<Value>(make: (key: boolean) => Value): (key: boolean) => Value {
  const known = new Map<boolean, Value>();
  return (key) => {
    const value = known.get(key) ?? make(key);
    known.set(key, value);
    return value;
  };
}

const launchesOf = ({ dayTypes }: Traffic): number =>
  sumOf(
    dayTypes.map(
      ({ daysPerYear, launchesBySite }) => daysPerYear * sumOf(launchesBySite.map((hours) => sumOf(hours))),
    ),
  );

const ownOf = (cells: SearchedSet["cells"]): Taken => {
  const levels = cells.map(({ own }) => own);
  const taken = cells.map((cell, index) => at(cell.levels, at(levels, index)));
  return { levels, hours: sumOf(taken.map(({ hours }) => hours)), met: sumOf(taken.map(({ met }) => met)) };
};

export const yearsOf = ({ rampUp }: Pick<ProgramOption, "rampUp">, horizon: number): YearShare[] =>
  Array.from({ length: horizon }, (_, year) => rampUp[year] ?? { reach: 1, cost: 1 });

/** A program of the search as a variant of the option that it starts from. */
export function variantAt(plan: SearchPlan, set: number, taken: Pick<Taken, "hours" | "met">): Variant {
  const share = taken.met / plan.launches;
  return {
    hours: hoursShare(plan, taken),
    coverage: isByHours(plan) ? { of: share } : { times: share },
    measures: at(plan.sets, set).measures,
    lumpShare: plan.searched.lumpShare,
  };
}

/** Whether the option states open hours, from which its coverage follows. */
export const isByHours = ({ document, rules }: SearchPlan): boolean =>
  at(document.options, rules.base).open !== undefined;

/**
 * Hours over those of the option's own opening with its own measures; so that its inspectors, where they are one line,
 * have whole hours.
 */
export function hoursShare({ sets, base }: SearchPlan, { hours }: Pick<Taken, "hours">): number {
  const own = at(sets, 0).own.hours;
  const inspectors = base.staff.find(({ group = "wages" }) => group === "wages")?.hoursPerYear ?? 0;
  if (own === 0) return 0;
  return inspectors > 0 ? Math.round((inspectors * hours) / own) / inspectors : hours / own;
}
