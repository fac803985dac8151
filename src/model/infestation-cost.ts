import { centsByBearer } from "./money/bearer.js";
import { type CostLine, type Money, moneyOf } from "./money/line.js";
import type { StructureResult } from "./structures/structure.js";

/** What an established infestation costs by year since establishment; sums of the structures' lines. */
export interface InfestationCost {
  /** All structures together, infrastructure only. */
  readonly byYear: readonly Money[];
  /** One structure's part of it; made when asked for. */
  readonly ofStructure: (id: string) => readonly Money[];
  readonly byBearer: ReadonlyArray<{ readonly id: string; readonly byYear: readonly Money[] }>;
  /** Own lines of the author that are not infrastructure, totalled apart. */
  readonly apartByYear: readonly Money[];
}

const isApart = (line: CostLine) => line.type === "apart";

/** @param skipYears years of infestation that lie before the study's first year */
export function infestationCost(structures: readonly StructureResult[], skipYears: number): InfestationCost {
  const horizon = Math.max(0, ...structures.map(({ years }) => years.length - skipYears));
  const noCents = () => new Float64Array(horizon);
  const sums = {
    all: noCents(),
    apart: noCents(),
    byStructure: new Map<string, Float64Array>(),
    byBearer: new Map<string, Float64Array>(),
  };
  for (const { structure, years } of structures) {
    sums.byStructure.set(structure.id, sums.byStructure.get(structure.id) ?? noCents());
    for (const [year, lines] of years.slice(skipYears).entries()) {
      for (const line of lines) {
        if (isApart(line)) {
          add(sums.apart, year, line);
          continue;
        }
        add(sums.all, year, line);
        add(streamOf(sums.byStructure, structure.id, noCents), year, line);
        for (const [id, cents] of centsByBearer(line.bearer, line.cents)) {
          add(streamOf(sums.byBearer, id, noCents), year, { cents });
        }
      }
    }
  }
  return {
    byYear: moneys(sums.all),
    ofStructure: (id) => moneys(sums.byStructure.get(id) ?? noCents()),
    byBearer: [...sums.byBearer].map(([id, cents]) => ({ id, byYear: moneys(cents) })),
    apartByYear: moneys(sums.apart),
  };
}

function streamOf(streams: Map<string, Float64Array>, id: string, empty: () => Float64Array): Float64Array {
  const known = streams.get(id);
  if (known) return known;
  const stream = empty();
  streams.set(id, stream);
  return stream;
}

function add(cents: Float64Array, year: number, line: Pick<CostLine, "cents">): void {
  cents[year] = (cents[year] ?? 0) + line.cents;
}

const moneys = (cents: Float64Array): Money[] => Array.from(cents, moneyOf);
