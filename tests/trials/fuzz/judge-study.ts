import type { AssumptionSet } from "#product/assumptions/entry.js";
import type { Comparison } from "#product/model/compare.js";
import type { CostLine } from "#product/model/money/line.js";
import { renderReportBody } from "#product/report/document/html.js";
import { resultsJson } from "#product/report/results/results.js";
import { comparedRun } from "#product/study/compared/compared.js";
import { runStudy } from "#product/study/prepare/compute.js";
import { InputError, type Problem } from "#product/study/reading/problems.js";
import { readStudyText } from "#product/study/reading/read.js";
import { type Fault, longestMilliseconds, notFinite, processorMilliseconds } from "./fault.js";

export interface StudyVerdict {
  readonly faults: readonly Fault[];
  readonly isComputed: boolean;
  readonly milliseconds: number;
}

/**
 * Reads a text as a study and computes it: either figures come out, or problems that name their places.
 * @param isWhole also with ranges, stations and the report, which take ten times as long
 */
export function judgeStudy(text: string, assumptions: AssumptionSet, isWhole = false): StudyVerdict {
  const start = processorMilliseconds();
  const { comparison, faults } = computed(text, assumptions);
  const found = [...faults, ...(comparison ? faultsOfComparison(comparison) : [])];
  const milliseconds = processorMilliseconds() - start;
  const slow =
    milliseconds > longestMilliseconds ? [{ what: "slow", detail: `${milliseconds.toFixed(0)} ms` }] : [];
  const whole = comparison && isWhole ? faultsOfWhole(text, assumptions) : [];
  return { faults: [...found, ...slow, ...whole], isComputed: comparison !== undefined, milliseconds };
}

function computed(
  text: string,
  assumptions: AssumptionSet,
): { comparison?: Comparison; faults: readonly Fault[] } {
  try {
    return { comparison: comparedRun(readStudyText(text, "the study"), assumptions).comparison, faults: [] };
  } catch (error) {
    if (error instanceof InputError) return { faults: faultsOfProblems(error.problems) };
    return { faults: [{ what: "crash", detail: stackOf(error) }] };
  }
}

export const stackOf = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message).split("\n").slice(0, 5).join(" | ") : String(error);

export function faultsOfProblems(problems: readonly Problem[]): Fault[] {
  if (problems.length === 0) return [{ what: "refused without a reason", detail: "no problem is told" }];
  return problems
    .filter((each) => [each.path, each.found, each.allowed, each.remedy].some((part) => !isTold(part)))
    .map((each) => ({ what: "problem without its parts", detail: JSON.stringify(each) }));
}

const isTold = (part: string): boolean => part.trim() !== "" && !/\bundefined\b|\[object/.test(part);

function faultsOfComparison(comparison: Comparison): Fault[] {
  const { infestation, baseline, options, structures, lake, schedules } = comparison;
  const told = { infestation, baseline, options, structures, suitability: lake.suitability, schedules };
  const wrong = notFinite(told);
  return [
    ...(wrong === undefined ? [] : [{ what: "not finite", detail: wrong }]),
    ...silentZeros(comparison),
  ];
}

function faultsOfWhole(text: string, assumptions: AssumptionSet): Fault[] {
  try {
    const run = runStudy(readStudyText(text, "the study"), assumptions);
    const wrong = notFinite(resultsJson(run));
    const html = renderReportBody(run);
    const printed = /.{0,60}(>|\s)(-?[$€£]?(NaN|Infinity|undefined)|\[object)\b.{0,40}/.exec(html)?.[0];
    return [
      ...(wrong === undefined ? [] : [{ what: "not finite in results", detail: wrong }]),
      ...(printed === undefined ? [] : [{ what: "not finite in print", detail: printed }]),
    ];
  } catch (error) {
    return [{ what: "crash after the comparison", detail: stackOf(error) }];
  }
}

const lineText = ({ structure, what, quantity, unitRate, cents }: CostLine) =>
  `${structure}, ${what}: ${quantity} at ${unitRate} is ${cents} cents`;

/** A line with a quantity and a price has an amount, and a part that mussels foul to its limit costs something. */
function silentZeros(comparison: Comparison): Fault[] {
  const lines = comparison.structures.flatMap(({ years }) => years.flat());
  const empty = lines.find(({ quantity, unitRate, cents }) => quantity * unitRate >= 0.01 && cents === 0);
  const unpaid = comparison.structures.flatMap(({ structure, components, years }) =>
    components
      .filter(
        ({ chosen, untouchedLayer }) =>
          chosen.yearlyCost > 1 && untouchedLayer.thickness > 0 && years.every((each) => each.length === 0),
      )
      .map(({ name, chosen }) => `${structure.id}, ${name}: ${chosen.plan.label} costs nothing in any year`),
  );
  return [
    ...(empty ? [{ what: "silent zero", detail: lineText(empty) }] : []),
    ...unpaid.map((detail) => ({ what: "silent zero", detail })),
  ];
}
