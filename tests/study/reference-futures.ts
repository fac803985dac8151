import type { AssumptionSet } from "../../src/assumptions/entry.js";
import { type Comparison, compare } from "../../src/model/compare.js";
import { futuresPerLake } from "../../src/model/futures/draw-plan.js";
import type { OptionResult } from "../../src/model/option.js";
import { expectedLosses } from "../../src/model/present-value.js";
import { containmentOf } from "../../src/model/program/containment.js";
import { costShare } from "../../src/model/program/ramp-up.js";
import { yearlyHazard } from "../../src/model/risk/hazard.js";
import { stateProbabilities } from "../../src/model/risk/state-probabilities.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import type { DrawnStudy } from "../../src/study/odds/draws.js";
import { hydrologicYearId } from "../../src/study/odds/odds.js";
import { classChanceId } from "../../src/study/odds/uncertain-inputs.js";
import { prepareStudy } from "../../src/study/prepare/prepared.js";
import { toModel } from "../../src/study/prepare/to-model.js";
import { rangedQuantities, withValues } from "../../src/study/reading/ranged.js";
import { typedQuantities } from "../../src/study/typed/typed-quantities.js";
import { blockDraws } from "../model/futures/block-draws.js";

/** What an option comes to in one future. */
export interface ReferenceFuture {
  readonly expected: number;
  readonly cost: number;
  readonly establishment: number;
  readonly program: number;
  readonly everInfested: number;
  readonly infestedAtEnd: number;
  readonly byYear: readonly number[];
}

/**
 * One future worked out without short cuts: the whole study is prepared and compared with the drawn values in place, and
 * the future with its year of establishment is followed year by year. In the order of the options.
 */
export function referenceFuture(
  document: StudyDocument,
  assumptions: AssumptionSet,
  drawn: Pick<DrawnStudy, "plan">,
  place: Place,
): ReferenceFuture[] {
  const { comparison, results, luck } = referenceComparison(document, assumptions, drawn, place);
  return results.map((result) => followed(result, comparison, luck));
}

type Place = readonly [block: number, lake: number, future: number];

/** The whole comparison with the values of one future in place, its options in their order, and its luck. */
export function referenceComparison(
  document: StudyDocument,
  assumptions: AssumptionSet,
  { plan }: Pick<DrawnStudy, "plan">,
  [block, lake, future]: Place,
): { comparison: Comparison; results: OptionResult[]; luck: number } {
  const draws = blockDraws(plan, block);
  const draw = lake * futuresPerLake + future;
  const values = new Map([
    ...[...draws.lake].map(([id, column]) => [id, column[lake] ?? Number.NaN] as const),
    ...[...draws.chances].map(([id, column]) => [id, column[draw] ?? Number.NaN] as const),
  ]);
  const comparison = comparedAt(document, assumptions, values);
  const results = document.options.map(({ id }) => {
    const result = [comparison.baseline, ...comparison.options.map((each) => each.result)].find(
      ({ option }) => option.id === id,
    );
    if (!result) throw new Error(`no result of ${id}`);
    return result;
  });
  return { comparison, results, luck: draws.luck[draw] ?? Number.NaN };
}

function comparedAt(
  document: StudyDocument,
  assumptions: AssumptionSet,
  values: ReadonlyMap<string, number>,
) {
  const drawn = withValues(document, [
    ...rangedQuantities(document).map(({ id, path }) => ({ path, value: values.get(id) ?? Number.NaN })),
    ...typedValues(document, assumptions, values),
  ]);
  const { assumed, ...read } = prepareStudy(drawn, assumptions);
  // How the two ways to the chance weigh is worked out once, from the study's own values.
  const { estimate } = prepareStudy(document, assumptions);
  const { boats, options } = toModel(drawn, { ...read, estimate });
  const input = { ...read.input, boats, options };
  const year = values.get(hydrologicYearId);
  const record = year === undefined ? input.lake.record : input.lake.record?.slice(year, year + 1);
  const classes = input.boats.classes.map((each) => {
    const found = values.get(classChanceId(each.id));
    return found === undefined ? each : { ...each, fouled: found };
  });
  const study = { ...input, lake: { ...input.lake, record }, boats: { ...input.boats, classes } };
  return compare(study, (id) => values.get(id) ?? assumed(id));
}

/** A place p of −1 to 1 in the range from l over the value v to h: v + p (v − l) below it, v + p (h − v) above. */
function typedValues(
  document: StudyDocument,
  assumptions: AssumptionSet,
  values: ReadonlyMap<string, number>,
) {
  return typedQuantities(document, assumptions).flatMap(({ id, members }) =>
    members.map(({ path, quantity: { value }, range: { low, high } }) => {
      const place = values.get(id) ?? Number.NaN;
      return { path, value: value + place * (place < 0 ? value - low : high - value) };
    }),
  );
}

function followed(result: OptionResult, comparison: Comparison, luck: number): ReferenceFuture {
  const { discountFactors: factors, rises, input, rates } = comparison;
  const isInfested = input.lake.infestedSince !== undefined;
  const hazards = result.reachingByYear.map((reaching, year) =>
    isInfested ? Number(year === 0) : yearlyHazard(reaching, year, rates),
  );
  let clean = 1;
  const found = hazards.findIndex((chance) => {
    clean *= 1 - chance;
    return 1 - clean > luck;
  });
  const establishment = found < 0 ? hazards.length : found;
  const course = stateProbabilities(
    hazards.map((chance, year) => (year < establishment ? 0 : year === establishment ? 1 : chance)),
    result.detection,
  );
  const losses = expectedLosses(
    { unnoticed: result.unnoticed, noticed: result.schedule.infestation },
    course,
    rises,
  );
  const { option } = result;
  const attempts = containmentOf(option, input.money, course, { factors, rises });
  const byYear = course.map((during, year) => {
    const knownBefore = year === 0 ? Number(isInfested) : (course[year - 1]?.known ?? Number.NaN);
    const program = (result.programInYear[year] ?? Number.NaN) * costShare(option, year);
    const known = during.noticed.reduce((sum, each) => sum + each, 0);
    return (
      program * (1 - knownBefore) +
      program * knownBefore * option.afterInfestation.share +
      known * (result.scheduleInYear[year] ?? Number.NaN) +
      (attempts?.expectedByYear[year] ?? 0) +
      (losses[year] ?? Number.NaN)
    );
  });
  return {
    expected: result.presentValue.total.toNumber(),
    cost: byYear.reduce((sum, cost, year) => sum + cost * (factors[year] ?? Number.NaN), 0),
    establishment,
    program: result.presentValue.program.toNumber(),
    everInfested: 1 - hazards.reduce((each, chance) => each * (1 - chance), 1),
    infestedAtEnd: result.statesByYear.at(-1)?.infested ?? Number.NaN,
    byYear,
  };
}
