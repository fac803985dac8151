import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { normalRange } from "../../assumptions/normal-range.js";
import type { UncertainInput } from "../../model/futures/draw-plan.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import type { Bounds } from "../../model/register/expected.js";
import type { DistributionInput } from "../../model/uncertainty/distribution-of.js";
import type { Dimension } from "../../units/dimension.js";
import { dimensions } from "../../units/dimensions.js";
import type { Spread } from "../../units/spread.js";
import type { StudyDocument } from "../format/schema.js";
import { phaseAssumptions } from "../papers/phase-prices.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { quantityName, type RangedQuantity, rangedQuantities } from "../reading/ranged.js";
import { isWithin, typicalPlacesIn } from "../short/typical-places.js";
import { type TypedQuantity, typedQuantities } from "../typed/typed-quantities.js";
import { hydrologicYearId } from "./odds.js";

/** An input that is drawn, with what the report calls it. */
export type NamedInput = UncertainInput & {
  readonly name: string;
  /** Whether nobody entered it: a typical value stands for it. */
  readonly isTypical?: boolean;
};

/** Start of the id under which a class's chance is drawn. */
export const classChanceId = (vesselClass: string) => `boats/classes/${vesselClass}/fouled`;

/**
 * Assumptions that are not drawn: limits of checks, rates at which the same futures are weighed again, and what is
 * worked out once of the study, as how the two ways to the chance weigh.
 */
const notDrawn = /^(checks\.|money\.|learning\.|arrival\.(fouled-count|own-rate)-spread$)/;

/**
 * All that is drawn of a study: assumptions that it uses and whose range is not a point, quantities that its author gave
 * with a range or typed as one number, chances of vessel classes from counts, and the operating year of a record.
 * @param usedByLake ids of the assumptions that decide what the lake costs; the others decide chances alone
 */
export function uncertainInputs(
  document: StudyDocument,
  assumptions: AssumptionSet,
  prepared: Pick<PreparedStudy, "input" | "overrides" | "prices" | "chances">,
  used: { readonly lake: ReadonlySet<string>; readonly chances: ReadonlySet<string> },
): NamedInput[] {
  const ids = [...assumptions.entries.keys()].filter((id) => used.lake.has(id) || used.chances.has(id));
  return [
    ...assumptionInputs(ids, assumptions, prepared, (id) => (used.lake.has(id) ? "lake" : "chances")),
    ...quantityInputs(document, assumptions),
    ...chanceInputs(document, prepared.chances),
    ...yearInputs(prepared),
  ];
}

/** What is drawn for the papers alone: what is done once mussels are found is in no comparison. */
export function foundInputs(
  document: StudyDocument,
  prepared: Pick<PreparedStudy, "assumptions" | "overrides" | "prices">,
): UncertainInput[] {
  const { assumptions } = prepared;
  return [
    ...assumptionInputs(phaseAssumptions(document), assumptions, prepared, () => "lake"),
    ...rangedQuantities(document)
      .filter(isOfPapers)
      .map((ranged) => ({
        ...quantityInput(ranged, document),
        limits: { low: 0, high: Number.POSITIVE_INFINITY },
      })),
  ];
}

export const isOfPapers = ({ path }: Pick<RangedQuantity, "path">): boolean => path[0] === "report";

function assumptionInputs(
  ids: readonly string[],
  assumptions: AssumptionSet,
  prepared: Pick<PreparedStudy, "overrides" | "prices">,
  stageOf: (id: string) => UncertainInput["stage"],
): NamedInput[] {
  const overridden = new Map(prepared.overrides.map((override) => [override.entry.id, override]));
  return ids
    .filter((id) => !notDrawn.test(id))
    .flatMap((id): NamedInput[] => {
      const entry = assumptions.entries.get(id);
      if (!entry) return [];
      const override = overridden.get(id);
      const factor = prepared.prices.factorOf(entry);
      const distribution = override
        ? override.spread && spreadInput(override.spread, override.value)
        : entryInput(entry, factor);
      const limits = limitsOf(assumptions.expected.get(id)?.bounds, factor);
      return distribution ? [{ id, name: entry.title, stage: stageOf(id), distribution, limits }] : [];
    });
}

/**
 * What is drawn of an assumption is kept within what the model can bear; no range reaches a bound that it may not meet.
 */
function limitsOf(bounds: Bounds | undefined, factor: number): UncertainInput["limits"] {
  return (
    bounds && {
      low: (bounds.from ?? bounds.above ?? Number.NEGATIVE_INFINITY) * factor,
      high: (bounds.to ?? bounds.below ?? Number.POSITIVE_INFINITY) * factor,
    }
  );
}

function entryInput(
  { value, low, high, distribution }: Assumption,
  factor: number,
): DistributionInput | undefined {
  if (low === high) return undefined;
  const ends = { low: low * factor, high: high * factor };
  return spreadInput({ kind: distribution, ...ends }, value * factor);
}

/** A spread as a distribution; `mode` is the likeliest value of a beta-PERT or triangular one. */
function spreadInput(spread: Spread, mode: number): DistributionInput {
  switch (spread.kind) {
    case "pert":
    case "triangular":
      return { kind: spread.kind, low: spread.low, mode, high: spread.high };
    case "uniform":
      return { kind: "uniform", low: spread.low, high: spread.high };
    case "lognormal":
      return { kind: "lognormal", p10: spread.low, p90: spread.high };
    case "normal":
      return { kind: "truncated-normal", ...normalRange(spread) };
    case "discrete":
      return {
        kind: "discrete",
        values: spread.choices.map(({ value, share }) => ({ value, weight: share })),
      };
  }
}

/** Quantities of the study, with a range or typed as one number; those that nobody entered are marked. */
function quantityInputs(document: StudyDocument, assumptions: AssumptionSet): NamedInput[] {
  const places = typicalPlacesIn(document, document.study.typical);
  const isTypical = (own: readonly PropertyKey[]) => places.some(({ path }) => isWithin(own, path));
  const marked = (input: NamedInput, paths: readonly (readonly PropertyKey[])[]): NamedInput =>
    paths.every(isTypical) ? { ...input, isTypical: true } : input;
  return [
    ...rangedQuantities(document)
      .filter((ranged) => !isOfPapers(ranged))
      .map((ranged) => marked(quantityInput(ranged, document), [ranged.path])),
    ...typedQuantities(document, assumptions).map((typed) =>
      marked(
        typedInput(typed),
        typed.members.map(({ path }) => path),
      ),
    ),
  ];
}

function quantityInput({ id, path, quantity }: RangedQuantity, document: StudyDocument): NamedInput {
  const dimension: Dimension = dimensions[quantity.dimension];
  return {
    id,
    name: quantityName(document, path),
    stage: path[0] === "boats" ? "chances" : "lake",
    distribution: spreadInput(quantity.spread, quantity.value),
    limits: {
      low: dimension.minimum ?? Number.NEGATIVE_INFINITY,
      high: dimension.maximum ?? Number.POSITIVE_INFINITY,
    },
  };
}

/** The place in the ranges of all members: −1 at the low ends, 0 as typed, 1 at the high ends. */
const typedInput = ({ id, name }: TypedQuantity): NamedInput => ({
  id,
  name,
  stage: "lake",
  distribution: { kind: "pert", low: -1, mode: 0, high: 1 },
});

/** Chances that rest on counts, by the belief that the counts leave. */
function chanceInputs({ boats }: StudyDocument, chances: readonly ClassChance[]): NamedInput[] {
  return boats.classes.flatMap(({ id, name }, index) => {
    const belief = chances[index]?.belief;
    return belief
      ? [
          {
            id: classChanceId(id),
            name: `share of boats found fouled in the class “${name}”`,
            stage: "chances",
            distribution: { kind: "beta", ...belief },
          },
        ]
      : [];
  });
}

function yearInputs({ input }: Pick<PreparedStudy, "input">): NamedInput[] {
  const years = input.lake.record?.length ?? 0;
  if (years < 2) return [];
  const values = Array.from({ length: years }, (_, value) => ({ value, weight: 1 }));
  return [
    {
      id: hydrologicYearId,
      name: "operating year of the record",
      stage: "lake",
      distribution: { kind: "discrete", values },
    },
  ];
}
