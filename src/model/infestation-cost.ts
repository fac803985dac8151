import { type CostLine, type Money, noMoney, sumOf, totalOf } from "./money/line.js";
import type { StructureResult } from "./structures/structure.js";

/** What an established infestation costs by year since establishment; sums of the structures' lines. */
export interface InfestationCost {
  /** All structures together, infrastructure only. */
  readonly byYear: readonly Money[];
  readonly byStructure: ReadonlyArray<{ readonly id: string; readonly byYear: readonly Money[] }>;
  readonly byBearer: ReadonlyArray<{ readonly id: string; readonly byYear: readonly Money[] }>;
  /** Own lines of the author that are not infrastructure, totalled apart. */
  readonly apartByYear: readonly Money[];
}

const isApart = (line: CostLine) => line.type === "apart";

/** @param skipYears years of infestation that lie before the study's first year */
export function infestationCost(structures: readonly StructureResult[], skipYears: number): InfestationCost {
  const counted = structures.map(({ structure, years }) => ({
    id: structure.id,
    years: years.slice(skipYears),
  }));
  const byStructure = counted.map(({ id, years }) => ({
    id,
    byYear: years.map((lines) => totalOf(lines.filter((line) => !isApart(line)))),
  }));
  return {
    byYear: sumByYear(byStructure.map((each) => each.byYear)),
    byStructure,
    byBearer: byBearer(counted.map((each) => each.years)),
    apartByYear: sumByYear(counted.map(({ years }) => years.map((lines) => totalOf(lines.filter(isApart))))),
  };
}

/** One pass over the lines of each year, so that a bearer more costs nothing. */
function byBearer(structures: ReadonlyArray<readonly (readonly CostLine[])[]>) {
  const streams = new Map<string, Money[]>();
  for (const years of structures) {
    years.forEach((lines, year) => {
      for (const line of lines) {
        if (isApart(line)) continue;
        const stream = streams.get(line.bearer) ?? Array<Money>(years.length).fill(noMoney);
        stream[year] = (stream[year] ?? noMoney).plus(line.amount);
        streams.set(line.bearer, stream);
      }
    });
  }
  return [...streams].map(([id, byYear]) => ({ id, byYear }));
}

function sumByYear(streams: ReadonlyArray<readonly Money[]>): Money[] {
  const years = Math.max(0, ...streams.map((stream) => stream.length));
  return Array.from({ length: years }, (_, year) =>
    sumOf(streams.flatMap((stream) => (stream[year] === undefined ? [] : [stream[year]]))),
  );
}
