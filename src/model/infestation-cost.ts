import { centsByBearer } from "./money/bearer.js";
import { type CostLine, type Money, moneyOf } from "./money/line.js";
import type { StructureResult } from "./structures/structure.js";

/** What an infestation costs by year since establishment, all together and by what it is. */
export interface YearlyCost {
  readonly byYear: readonly Money[];
  /** What is lost, whether anyone knows of the mussels or not. */
  readonly harm: readonly Money[];
  /** What is done about them: only once they are noticed. */
  readonly control: readonly Money[];
}

/** What an established infestation costs by year since establishment; sums of the structures' lines. */
export interface InfestationCost extends YearlyCost {
  /** One structure's part of it; made when asked for. */
  readonly ofStructure: (id: string) => YearlyCost;
  readonly byBearer: ReadonlyArray<YearlyCost & { readonly id: string }>;
  /** Own lines of the author that are not infrastructure, totalled apart. */
  readonly apartByYear: readonly Money[];
}

const isApart = (line: CostLine) => line.type === "apart";

/** Losses are harm; work and protection are control. */
export const isControl = ({ type }: CostLine) => type !== "loss";

/** @param skipYears years of infestation that lie before the study's first year */
export function infestationCost(structures: readonly StructureResult[], skipYears: number): InfestationCost {
  const horizon = Math.max(0, ...structures.map(({ years }) => years.length - skipYears));
  const noCents = (): CentsByYear => ({
    harm: new Float64Array(horizon),
    control: new Float64Array(horizon),
  });
  const all = noCents();
  const apart = new Float64Array(horizon);
  const byStructure = new Map<string, CentsByYear>();
  const byBearer = new Map<string, CentsByYear>();
  for (const { structure, years } of structures) {
    const ofStructure = streamOf(byStructure, structure.id, noCents);
    for (const [year, lines] of years.slice(skipYears).entries()) {
      for (const line of lines) {
        if (isApart(line)) {
          add(apart, year, line.cents);
          continue;
        }
        const part = isControl(line) ? "control" : "harm";
        add(all[part], year, line.cents);
        add(ofStructure[part], year, line.cents);
        for (const [id, cents] of centsByBearer(line.bearer, line.cents)) {
          add(streamOf(byBearer, id, noCents)[part], year, cents);
        }
      }
    }
  }
  return {
    ...moneys(all),
    ofStructure: (id) => moneys(byStructure.get(id) ?? noCents()),
    byBearer: [...byBearer].map(([id, cents]) => ({ id, ...moneys(cents) })),
    apartByYear: Array.from(apart, moneyOf),
  };
}

type CentsByYear = Readonly<Record<"harm" | "control", Float64Array>>;

function streamOf(streams: Map<string, CentsByYear>, id: string, empty: () => CentsByYear): CentsByYear {
  const known = streams.get(id);
  if (known) return known;
  const stream = empty();
  streams.set(id, stream);
  return stream;
}

function add(stream: Float64Array, year: number, cents: number): void {
  stream[year] = (stream[year] ?? 0) + cents;
}

const moneys = ({ harm, control }: CentsByYear): YearlyCost => ({
  byYear: Array.from(harm, (cents, year) => moneyOf(cents + (control[year] ?? 0))),
  harm: Array.from(harm, moneyOf),
  control: Array.from(control, moneyOf),
});
