import type { AssumptionSet } from "../../assumptions/entry.js";
import type { Comparison } from "../../model/compare.js";
import { once } from "../../model/computed-once.js";
import type { PriceGroup } from "../../model/money/price-group.js";
import type { OptionResult } from "../../model/option.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { ScheduleResult } from "../../model/schedules.js";
import type { StudyDocument } from "../format/schema.js";
import { type MatureYears, matureYears } from "../levels/mature-years.js";
import { type TracedSchedule, tracedSchedules } from "../levels/traced-schedule.js";
import { type NamedInput, uncertainInputs } from "../odds/uncertain-inputs.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { type InfestationYear, infestationYears } from "./infestation-years.js";
import { rateReading, structureRateKey, usedValue } from "./line-rates.js";
import { type TracedLevels, tracedLevels } from "./traced-levels.js";
import { type TracedOption, tracedOption } from "./traced-option.js";
import { type TracedStructure, tracedStructure } from "./traced-structure.js";
import { type GroupedLine, linesBySchedule, risingGroup, type YearlyLine } from "./yearly-lines.js";

/** All that reports and results tell of a study beside its comparison, worked out once: they only word and round it. */
export interface TracedResult {
  readonly mature: MatureYears;
  /** The option without a program first. */
  readonly options: readonly [TracedOption, ...TracedOption[]];
  /** The program in force, where it is another than none and the lake is not infested yet. */
  readonly existing: OptionResult | undefined;
  /** The lake's own levels first. */
  readonly schedules: readonly [TracedSchedule, ...TracedSchedule[]];
  /** In the study's order. */
  readonly structures: readonly TracedStructure[];
  readonly levels: TracedLevels;
  /** Of an infestation, by year since establishment. */
  readonly years: readonly InfestationYear[];
  /** Every cost line of every year by schedule of levels; worked out at each call, since many structures have too many to keep. */
  readonly lines: () => ReadonlyMap<ScheduleResult, readonly YearlyLine[]>;
  /** Group of a line whose price rises otherwise than prices in general; nothing for others. */
  readonly rising: (line: GroupedLine) => PriceGroup | undefined;
  /** What lines of a structure with one unit rate have in common. */
  readonly rateKey: typeof structureRateKey;
  /** An assumption as the study uses it. */
  readonly used: (id: AssumptionId) => number;
  /** What the study's futures draw; worked out when asked for. */
  readonly drawn: () => readonly NamedInput[];
}

/** What a traced result is worked out from. */
export interface Computed extends Pick<PreparedStudy, "overrides" | "prices" | "chances"> {
  readonly document: StudyDocument;
  readonly assumptions: AssumptionSet;
  readonly comparison: Comparison;
  /** Those that the comparison read. */
  readonly usedAssumptions: readonly string[];
}

export function tracedResult(computed: Computed): TracedResult {
  const { document, comparison } = computed;
  const { baseline, options, structures } = comparison;
  const mature = matureYears(comparison);
  const existing = existingOption(document, comparison);
  const traced = (result: OptionResult) => tracedOption(result, comparison, existing);
  return {
    mature,
    options: [traced(baseline), ...options.map(({ result }) => traced(result))],
    existing,
    schedules: tracedSchedules(comparison, mature),
    structures: structures.map((result) => tracedStructure(result, comparison, mature)),
    levels: tracedLevels(comparison, document),
    years: infestationYears(comparison),
    lines: () =>
      linesBySchedule(
        comparison,
        rateReading(computed, {
          plans: comparison.input.plans,
          discountRate: comparison.input.money.discountRate,
        }),
      ),
    rising: (line) => risingGroup(line, comparison),
    rateKey: structureRateKey,
    used: (id) => usedValue(id, computed),
    drawn: once(() => drawnInputs(computed)),
  };
}

function existingOption({ lake, study }: StudyDocument, { options }: Comparison): OptionResult | undefined {
  if (lake.infestedSince !== undefined) return undefined;
  return options.find(({ result }) => result.option.id === study.existingOption)?.result;
}

/** Inputs of the study's futures, by what the comparison read. */
function drawnInputs({
  document,
  assumptions,
  comparison,
  usedAssumptions,
  ...prepared
}: Computed): NamedInput[] {
  const used = { lake: new Set(usedAssumptions), chances: new Set<string>() };
  return uncertainInputs(document, assumptions, { ...prepared, input: comparison.input }, used);
}
