import { at, sumOf } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import type { Comparison } from "../../model/compare.js";
import type { StudyInput } from "../../model/inputs.js";
import { monthOfDay } from "../../model/lake/calendar.js";
import { centsByBearer } from "../../model/money/bearer.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { OptionResult } from "../../model/option.js";
import {
  type FoundCourse,
  type FoundTimes,
  foundCourse,
  type PaidWhen,
  phaseWorth,
} from "../../model/risk/course.js";
import { findsPerSample, type SampleKind } from "../../model/risk/detection.js";
import type { FoundDocument, PhaseDocument } from "../format/found-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { isCounted, phasePrices } from "../papers/phase-prices.js";
import { dayNumber } from "../prepare/to-model.js";
import type { TracedOption } from "./traced-option.js";

export interface TracedPhase {
  readonly phase: PhaseDocument;
  readonly when: PaidWhen;
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
  readonly course: { readonly without: FoundTimes; readonly withIt: FoundTimes };
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

/** Absent where the study says nothing of it, and where the lake is infested. */
export function tracedFound(parts: FoundParts): TracedFound | undefined {
  const { document, comparison, requested } = parts;
  const { found } = document.report;
  if (!found || document.lake.infestedSince !== undefined) return undefined;
  const course = {
    without: courseOf(comparison.baseline, found),
    withIt: courseOf(requested.result, found),
  };
  return {
    document: found,
    course: { without: course.without.times, withIt: course.withIt.times },
    phases: tracedPhases(course, parts),
    lostFees: lostFees(found, comparison.input),
    oneMore: oneMore(parts),
  };
}

type Course = Readonly<Record<"without" | "withIt", FoundCourse>>;

const courseOf = ({ statesByYear, option }: OptionResult, { cleanYears = 0 }: FoundDocument): FoundCourse =>
  foundCourse(statesByYear, { success: option.response?.chance ?? 0, cleanYears });

function tracedPhases(
  { without, withIt }: Course,
  { document, comparison, requested, assumed }: FoundParts,
): TracedPhase[] {
  const { discountFactors: factors, rises, baseline } = comparison;
  const { structures } = comparison.input;
  const phases = document.report.found?.phases ?? [];
  const pricesOf = ({ option }: OptionResult) =>
    phasePrices({ phases, structures, option, assumed, factors, rises });
  const before = pricesOf(baseline);
  return pricesOf(requested.result).map((price, index) => ({
    phase: price.phase,
    when: price.when,
    cost: sumOf(price.parts.map(({ amount }) => amount)),
    expected: {
      without: phaseWorth(at(before, index), without.payments),
      withIt: phaseWorth(price, withIt.payments),
    },
    isCounted: isCounted(price.phase),
  }));
}

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

/** The study with one more sample of each kind that is taken, and of a survey, against the study. */
function oneMore({ comparison, requested, compared }: FoundParts): TracedFound["oneMore"] {
  const { monitoring, id } = requested.result.option;
  const annuity = sumOf(comparison.discountFactors);
  const kinds = (Object.keys(findsPerSample) as SampleKind[]).filter(
    (kind) => monitoring?.[kind] || (kind === "searches" && monitoring && !monitoring.noticedWithin),
  );
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
