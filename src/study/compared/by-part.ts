import { sumOf } from "../../lists.js";
import type { StudyDocument } from "../format/schema.js";
import { matureMean, matureYears } from "../levels/mature-years.js";
import type { StudyRun } from "../prepare/compute.js";
import type { InputDifference } from "./input-differences.js";

type Compared = Pick<StudyRun, "document" | "comparison">;

/** A part of two studies of different lakes, with the figure that it decides. */
export interface PartDifference {
  readonly part: "structures" | "boats" | "program" | "money";
  /** How many inputs of it differ. */
  readonly inputs: number;
  /** Yearly damage once established; yearly chance without a program; yearly cost of what is requested; worth of 1 a year. */
  readonly left: number;
  readonly right: number;
}

const owners: Readonly<Record<PartDifference["part"], readonly string[]>> = {
  structures: ["lake", "structures", "workOrders"],
  boats: ["boats"],
  program: ["options", "study"],
  money: ["money"],
};

const decides: Readonly<Record<PartDifference["part"], (run: Compared) => number | undefined>> = {
  structures: ({ comparison }) => matureMean(comparison.infestation.byYear, matureYears(comparison)),
  boats: ({ comparison, document }) =>
    document.lake.infestedSince === undefined ? comparison.baseline.hazard : undefined,
  program: ({ comparison, document }) =>
    [comparison.baseline, ...comparison.options.map(({ result }) => result)]
      .find(({ option }) => option.id === document.study.requestedOption)
      ?.programPerYear.toNumber(),
  money: ({ comparison }) => sumOf(comparison.discountFactors),
};

/** Whether its figure is money. */
const isAmount = ({ part }: PartDifference): boolean => part === "structures" || part === "program";

/** Whether another lake is compared, and not this one under a new name: most structures in its levels are others or stand elsewhere. */
export function isOtherLake(left: StudyDocument, right: StudyDocument): boolean {
  const known = new Set(placesOf(left));
  const places = placesOf(right);
  const shared = places.filter((each) => known.has(each)).length;
  return left.lake.name !== right.lake.name && shared * 2 < Math.max(known.size, places.length);
}

/** Structures that stand in the levels, with where; all by their ids where none does. */
function placesOf({ structures }: StudyDocument): string[] {
  const places = structures.flatMap((each) => {
    const top = "topElevation" in each ? each.topElevation : undefined;
    const elevation = "elevation" in each ? each.elevation : top;
    return elevation === undefined ? [] : [`${each.id} at ${elevation.value}`];
  });
  return places.length > 0 ? places : structures.map(({ id }) => id);
}

/** The parts of two studies of different lakes, first the one whose figure differs most, as a ratio; amounts of two currencies have none. */
export function differencesByPart(
  left: Compared,
  right: Compared,
  inputs: readonly InputDifference[],
): PartDifference[] {
  const moving = inputs.filter(({ movesFigures }) => movesFigures);
  const parts = Object.keys(owners) as PartDifference["part"][];
  const found = parts.flatMap((part): PartDifference[] => {
    const [one, other] = [decides[part](left), decides[part](right)];
    const count = moving.filter(({ owner }) => owners[part].includes(owner.split("/")[0] ?? "")).length;
    return one === undefined || other === undefined || count === 0
      ? []
      : [{ part, inputs: count, left: one, right: other }];
  });
  const isSameMoney = left.document.money.currency === right.document.money.currency;
  const size = (each: PartDifference) =>
    isSameMoney || !isAmount(each) ? Math.abs(Math.log(each.right / each.left)) || 0 : 0;
  return found.toSorted((one, other) => size(other) - size(one));
}
