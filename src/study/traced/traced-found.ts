import { at, sumOf } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import type { Comparison } from "../../model/compare.js";
import type { StudyInput } from "../../model/inputs.js";
import { monthOfDay } from "../../model/lake/calendar.js";
import { centsByBearer } from "../../model/money/bearer.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { AssumptionId } from "../../model/register/register.js";
import { type FoundCourse, foundCourse } from "../../model/risk/course.js";
import { findsPerSample, type SampleKind } from "../../model/risk/detection.js";
import { treatmentCost } from "../../model/risk/treatment.js";
import type { FoundDocument, PhaseDocument } from "../format/found-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { dayNumber } from "../prepare/to-model.js";
import type { TracedOption } from "./traced-option.js";

/** When a phase is paid: each time, or for each year. */
export type PaidBy = "found" | "tried" | "known" | "watched" | "delisted";

const paidBy: Readonly<Record<PhaseDocument["phase"], PaidBy>> = {
  suspicion: "found",
  confirmation: "found",
  delimiting: "found",
  restriction: "found",
  treatment: "tried",
  "leaving-boats": "known",
  levels: "known",
  watch: "watched",
  delisting: "delisted",
};

export interface TracedPhase {
  readonly phase: PhaseDocument;
  readonly paidBy: PaidBy;
  /** Each time, or a year; price year. */
  readonly cost: number;
  /** Expected present value without a program, and with the option requested. */
  readonly expected: { readonly without: number; readonly withIt: number };
  /** Whether the comparison has it: an item, or the option's response. */
  readonly isCounted: boolean;
}

/** What is told of the day on which mussels are found. */
export interface TracedFound {
  readonly document: FoundDocument;
  readonly course: { readonly without: FoundCourse; readonly withIt: FoundCourse };
  readonly phases: readonly TracedPhase[];
  /** Launch fees that are lost while the ramps are closed, by payer. */
  readonly lostFees: readonly { readonly bearer: string; readonly amount: number }[];
  /** What one more sample a year of each kind is worth to the option requested, a year, before its price. */
  readonly oneMore: readonly { readonly kind: SampleKind; readonly perYear: number }[];
}

export interface FoundParts {
  readonly document: StudyDocument;
  readonly comparison: Comparison;
  readonly requested: TracedOption;
  readonly assumed: Assumed;
  /** The comparison of the same study with another input. */
  readonly compared: (input: StudyInput) => Comparison;
}

/** Assumptions behind it. */
export const foundAssumptions = ({ report }: Pick<StudyDocument, "report">): AssumptionId[] =>
  (report.found?.phases ?? []).some(isPricedByVolume) ? ["response.treatment-price"] : [];

const isPricedByVolume = ({ volume, cost, item }: PhaseDocument) =>
  volume !== undefined && cost === undefined && item === undefined;

/** Absent where the study says nothing of it, and where the lake is infested. */
export function tracedFound(parts: FoundParts): TracedFound | undefined {
  const { document, comparison, requested } = parts;
  const { found } = document.report;
  if (!found || document.lake.infestedSince !== undefined) return undefined;
  const success = requested.result.option.response?.chance ?? 0;
  const courseOf = ({ statesByYear, option }: Pick<TracedOption["result"], "statesByYear" | "option">) =>
    foundCourse(statesByYear, comparison.discountFactors, {
      success: option.response ? success : 0,
      cleanYears: found.cleanYears ?? 0,
    });
  const course = { without: courseOf(comparison.baseline), withIt: courseOf(requested.result) };
  return {
    document: found,
    course,
    phases: found.phases.map((phase) => tracedPhase(phase, course, parts)),
    lostFees: lostFees(found, comparison.input),
    oneMore: oneMore(parts),
  };
}

function tracedPhase(phase: PhaseDocument, course: TracedFound["course"], parts: FoundParts): TracedPhase {
  const by = paidBy[phase.phase];
  const { cost, isCounted } = costOf(phase, parts);
  return {
    phase,
    paidBy: by,
    cost,
    expected: { without: cost * course.without[by], withIt: cost * course.withIt[by] },
    isCounted,
  };
}

/** A phase's own cost, or that of the item or response that the comparison has already. */
function costOf(
  { phase, cost, volume, item }: PhaseDocument,
  { document, requested, assumed }: FoundParts,
): { cost: number; isCounted: boolean } {
  const { response } = requested.result.option;
  if (item !== undefined) return { cost: itemCost(item, document), isCounted: true };
  if (cost !== undefined) return { cost: cost.value, isCounted: false };
  if (phase === "treatment" && response) return { cost: response.cost, isCounted: true };
  return { cost: volume ? treatmentCost(volume.value, assumed) : 0, isCounted: false };
}

const itemCost = (name: string, { structures }: StudyDocument): number =>
  sumOf(
    structures.flatMap((structure) =>
      "items" in structure
        ? structure.items.filter((each) => each.name === name).map(({ cost }) => cost.value)
        : [],
    ),
  );

/** Launch fees of the days on which a restriction closes the ramps. */
function lostFees(
  { phases, suspectedOn }: FoundDocument,
  { structures }: StudyInput,
): TracedFound["lostFees"] {
  const closed = phases.filter(({ phase }) => phase === "restriction");
  const ramps = structures.flatMap((each) => ("launchFee" in each ? [each] : []));
  return ramps.flatMap(({ bearer, launchesPerDay, launchFee }) => {
    const amount = sumOf(
      closed.map(({ starts, lasts }) =>
        sumOf(
          Array.from({ length: lasts }, (_, day) =>
            at(launchesPerDay, monthOfDay(dayNumber(suspectedOn) + starts + day)),
          ),
        ),
      ),
    );
    const cents = Math.round(amount * launchFee * centsPerUnit);
    if (cents === 0) return [];
    return centsByBearer(bearer, cents).map(([id, part]) => ({ bearer: id, amount: part / centsPerUnit }));
  });
}

/** The study with one more sample of a kind, against the study. */
function oneMore({ comparison, requested, compared }: FoundParts): TracedFound["oneMore"] {
  const { monitoring, id } = requested.result.option;
  const annuity = sumOf(comparison.discountFactors);
  const kinds = (Object.keys(findsPerSample) as SampleKind[]).filter((kind) => monitoring?.[kind]);
  return kinds.map((kind) => {
    const options = comparison.input.options.map((option) =>
      option.id === id
        ? { ...option, monitoring: { ...monitoring, [kind]: (monitoring?.[kind] ?? 0) + 1 } }
        : option,
    );
    const after = compared({ ...comparison.input, options }).options.find(
      ({ result }) => result.option.id === id,
    );
    const saved = after
      ? requested.result.presentValue.infestation.minus(after.result.presentValue.infestation).toNumber()
      : 0;
    return { kind, perYear: saved / annuity };
  });
}
