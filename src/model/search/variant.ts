import type { CheckSteps, ProgramOption, ProgramSteps } from "../inputs.js";

/** What is taken to a program or left from it, beside the hours of its stations. */
export interface Measure {
  readonly id: string;
  readonly name: string;
  /** Groups of cost that are left out with it. */
  readonly leaves: readonly string[];
  readonly withoutSeals?: boolean | undefined;
  readonly withoutWash?: boolean | undefined;
  /** Of every fee; 1 where nothing is said. */
  readonly fees?: number | undefined;
  /** What it costs a year. */
  readonly cost?: number | undefined;
  /** Steps that it sets. */
  readonly steps?: Partial<Omit<ProgramSteps, "seals" | "byClass" | "coverage">> | undefined;
}

/** How a program differs from the option that it starts from. */
export interface Variant {
  /** Hours of its stations over those of that option. */
  readonly hours: number;
  /** Of all launches those that it meets, or of those that the option meets. */
  readonly coverage: { readonly of: number } | { readonly times: number };
  readonly measures: readonly Measure[];
  /** Share that goes with the hours of a lump in which wages are not told apart. */
  readonly lumpShare: number;
  /** Reach and cost of its first years, where they differ. */
  readonly rampUp?: ProgramOption["rampUp"] | undefined;
}

/** Whether wages are told apart from the rest; else a part of each lump goes with the hours. */
export const hasWages = ({ staff, yearly }: Pick<ProgramOption, "staff" | "yearly">): boolean =>
  staff.some(isWages) || yearly.some(isWages);

const isWages = (line: { readonly group?: string | undefined; readonly hoursPerYear?: number }) =>
  (line.group ?? ("hoursPerYear" in line ? "wages" : "other")) === "wages";

/** A line's hours or amount with other hours of the stations. */
export function withHours<Line extends ProgramOption["staff"][number] | ProgramOption["yearly"][number]>(
  line: Line,
  { hours, lumpShare }: Pick<Variant, "hours" | "lumpShare">,
  wagesApart: boolean,
): Line {
  if ("hoursPerYear" in line)
    return isWages(line) ? { ...line, hoursPerYear: line.hoursPerYear * hours } : line;
  if (!("cost" in line)) return line;
  if (wagesApart) return isWages(line) ? { ...line, cost: line.cost * hours } : line;
  return { ...line, cost: line.cost * (1 - lumpShare + lumpShare * hours) };
}

export const metShare = (coverage: Variant["coverage"], own: number): number =>
  Math.min(1, "of" in coverage ? coverage.of : own * coverage.times);

/** Of what an option deters, and of those who pay, the part that is left where another share is met: in proportion, and never more. */
export const deterredShare = (met: number, own: number): number => (own === 0 ? 1 : Math.min(1, met / own));

/** The option as the variant has it. */
export function variantOf(option: ProgramOption, variant: Variant): ProgramOption {
  const { measures, coverage, rampUp = option.rampUp } = variant;
  const { steps } = option;
  if (!steps) throw new Error(`${option.id}: a search starts from an option with steps`);
  const without = new Set(measures.flatMap(({ leaves }) => leaves));
  const stays = ({ group }: { readonly group?: string | undefined }) => !without.has(group ?? "");
  const wagesApart = hasWages(option);
  const set = stepsWith(steps, measures);
  const met = metShare(coverage, steps.coverage);
  const left = deterredShare(met, steps.coverage);
  const added = measures.flatMap(({ name, cost }) => (cost === undefined ? [] : [{ name, cost }]));
  return {
    ...option,
    rampUp,
    steps: {
      ...set,
      coverage: met,
      deterrence: set.deterrence * left,
    },
    staff: option.staff.map((line) => withHours(line, variant, wagesApart)),
    equipment: option.equipment.filter(stays),
    yearly: [...option.yearly.filter(stays).map((line) => withHours(line, variant, wagesApart)), ...added],
    fees: option.fees.map((each) => ({
      ...each,
      fee: each.fee * feesOf(measures),
      countPerYear: each.countPerYear * left,
      ...(each.payers === undefined ? {} : { payers: each.payers * left }),
    })),
  };
}

export const feesOf = (measures: readonly Measure[]): number =>
  measures.reduce((product, { fees = 1 }) => product * fees, 1);

function stepsWith(steps: ProgramSteps, measures: readonly Measure[]): ProgramSteps {
  let set = steps;
  for (const { withoutSeals, withoutWash, steps: own } of measures) {
    if (withoutSeals) set = { ...set, seals: [] };
    if (withoutWash) set = { ...set, hotWash: 0, byClass: set.byClass.map(unwashed) };
    set = { ...set, ...own };
  }
  return set;
}

const unwashed = <Own extends { readonly [Step in keyof CheckSteps]?: number | undefined }>(own: Own): Own =>
  own.hotWash === undefined ? own : { ...own, hotWash: 0 };
