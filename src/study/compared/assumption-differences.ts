import { isDeepStrictEqual } from "node:util";
import { withAgency } from "../../assumptions/agency.js";
import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import type { StudyDocument } from "../format/schema.js";
import type { InputDifference } from "./input-differences.js";

/** A study with its assumptions. */
export interface ComparedStudy {
  readonly document: StudyDocument;
  readonly assumptions: AssumptionSet;
}

const owner = { owner: "assumptions", ownerName: "assumptions" };

/** Place of an assumption among the differences. */
const assumptionPlace = (id: string): string => `assumptions/${id}`;

/** Parts of the files of assumptions that are one input as a whole, with what they are called. */
const wholeTables = {
  plans: "catalogue of protection plans",
  priceIndices: "tables of price indices",
};

/**
 * Assumptions that differ, in the files or by a study's own value.
 * @param used ids behind either study's figures; others are left out
 */
export function assumptionDifferences(
  left: ComparedStudy,
  right: ComparedStudy,
  used: ReadonlySet<string>,
): InputDifference[] {
  const ids = new Set([...ownOf(left), ...ownOf(right)].map(({ id }) => id));
  if (left.assumptions !== right.assumptions) for (const id of used) ids.add(id);
  return [
    ...[...ids].sort().flatMap((id) => differenceOf(id, left, right)),
    ...tableDifferences(left, right),
  ];
}

/** An assumption as a study uses it. */
interface Holding {
  readonly own: { readonly value: string | number; readonly reason: string } | undefined;
  readonly entry: Assumption | undefined;
}

/** The study's own values, and those of its agency for the rest. */
export const ownOf = ({ document, assumptions }: ComparedStudy) =>
  withAgency(document.overrides, assumptions.agency);

const holdingOf = (id: string, study: ComparedStudy): Holding => ({
  own: ownOf(study).find((override) => override.id === id),
  entry: study.assumptions.entries.get(id),
});

function differenceOf(id: string, left: ComparedStudy, right: ComparedStudy): InputDifference[] {
  const [before, after] = [holdingOf(id, left), holdingOf(id, right)];
  const value = (holding: Holding) => (holding.own ? String(holding.own.value) : enteredValue(holding.entry));
  const movesFigures = !isDeepStrictEqual(value(before), value(after));
  const isListed =
    movesFigures ||
    before.own?.reason !== after.own?.reason ||
    (!(before.own && after.own) && !isDeepStrictEqual(rangeOf(before.entry), rangeOf(after.entry)));
  if (!isListed) return [];
  return [
    {
      place: assumptionPlace(id),
      name: before.entry?.title ?? after.entry?.title ?? id,
      ...owner,
      kind: "changed",
      left: typed(before, !movesFigures),
      right: typed(after, !movesFigures),
      movesFigures,
    },
  ];
}

/** The fields of an entry that affect figures. */
const enteredValue = (entry: Assumption | undefined) => entry && [entry.value, entry.unit, entry.priceYear];
const rangeOf = (entry: Assumption | undefined) => entry && [entry.low, entry.high, entry.distribution];

/** The range is shown if only it differs. */
function typed({ own, entry }: Holding, withRange: boolean): string | undefined {
  if (own) return `${own.value}, own value: ${own.reason}`;
  const range = entry && withRange ? `, from ${entry.low} to ${entry.high}` : "";
  return entry && `${entry.value} ${entry.unit}${range}`;
}

function tableDifferences(left: ComparedStudy, right: ComparedStudy): InputDifference[] {
  const tables = ["plans", "priceIndices"] as const;
  return tables
    .filter((key) => !isDeepStrictEqual(left.assumptions[key], right.assumptions[key]))
    .map((key) => ({
      place: assumptionPlace(key),
      name: wholeTables[key],
      ...owner,
      kind: "changed",
      left: "as it was",
      right: "as it is",
      movesFigures: true,
    }));
}

/** Overrides of a mixture (see `mixture`): own values go with their entries. */
export function mixedOverrides(
  left: ReturnType<typeof ownOf>,
  right: ReturnType<typeof ownOf>,
  takesRight: (place: string) => boolean,
): StudyDocument["overrides"] {
  const isRight = ({ id }: { readonly id: string }) => takesRight(assumptionPlace(id));
  return [...left.filter((each) => !isRight(each)), ...right.filter(isRight)];
}

export function mixedAssumptions(
  left: AssumptionSet,
  right: AssumptionSet,
  takesRight: (place: string) => boolean,
): AssumptionSet {
  if (left === right) return { ...left, agency: undefined };
  const entries = new Map([...right.entries, ...left.entries]);
  for (const [id, entry] of right.entries) if (takesRight(assumptionPlace(id))) entries.set(id, entry);
  return {
    ...left,
    agency: undefined,
    entries,
    plans: (takesRight(assumptionPlace("plans")) ? right : left).plans,
    priceIndices: (takesRight(assumptionPlace("priceIndices")) ? right : left).priceIndices,
  };
}
