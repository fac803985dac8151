import { at } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import { futuresPerLake } from "../../model/futures/draw-plan.js";
import { type FoundDraw, type FoundFuture, foundDraw, foundFuture } from "../../model/futures/found-draw.js";
import { drawsPerYear } from "../../model/futures/found-outcome.js";
import type { lakeDraw } from "../../model/futures/lake-draw.js";
import { randomStream } from "../../model/random/generator.js";
import type { FoundTimes } from "../../model/risk/course.js";
import type { StudyDocument } from "../format/schema.js";
import { phasePrices } from "../papers/phase-prices.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { rangedQuantities, withValues } from "../reading/ranged.js";
import { valuesByBlock } from "./block-values.js";
import type { Drawing } from "./drawing.js";
import type { DrawSettings } from "./odds-settings.js";
import { foundInputs, isOfPapers } from "./uncertain-inputs.js";

/** What is done once mussels are found, in the futures of a draw of the lake; one for each option. */
export type FoundFutures = readonly OptionFound[];

interface OptionFound {
  /** Present cost of each phase, future by future: luck left out, and as it comes out. */
  readonly expected: readonly (readonly number[])[];
  readonly cost: readonly (readonly number[])[];
  /** Luck left out. */
  readonly times: Readonly<Record<keyof FoundTimes, readonly number[]>>;
  /** 1 where they are found at all. */
  readonly isFound: readonly number[];
}

/** Where a draw of the lake stands among all. */
export interface FuturePlace {
  readonly block: number;
  readonly lake: number;
}

/** Takes the futures of a draw of the lake one by one. */
export type FoundDrawing = (
  place: FuturePlace,
  drawn: ReturnType<Drawing["lake"]>,
  lake: ReturnType<typeof lakeDraw>,
) => {
  readonly add: (future: number, hazards: readonly (readonly number[])[], luck: number) => void;
  readonly futures: FoundFutures;
};

/**
 * What the phases cost is drawn with numbers of its own, so that nothing of the comparison moves with it: by Latin
 * hypercube whatever the study asks for, since a second Sobol sequence of the same dimensions would move with the first.
 * Absent where the study says nothing of it, and where mussels are there.
 */
export function foundDrawing(
  document: StudyDocument,
  prepared: PreparedStudy,
  { seed }: DrawSettings,
): FoundDrawing | undefined {
  const { found } = document.report;
  if (!found || document.lake.infestedSince !== undefined) return undefined;
  const inputs = foundInputs(document, prepared);
  const valuesOf = valuesByBlock({ seed, sampling: "latin-hypercube", inputs, groups: [] });
  const ranged = rangedQuantities(document).filter((each) => isOfPapers(each) && each.path[1] === "found");
  return ({ block, lake: index }, drawn, lake) => {
    const values = valuesOf(block).of("lake", index);
    const { phases } = withValues(
      { report: { found } },
      ranged.map(({ id, path, quantity }) => ({ path, value: values.get(id) ?? quantity.value })),
    ).report.found;
    const { money, options, structures } = drawn.input;
    const { factors, rises } = lake;
    const assumed: Assumed = (id) => values.get(id) ?? drawn.source(id);
    const draws: FoundDraw[] = [];
    options.forEach((option, place) => {
      const { numbers, states } = at(lake.options, place);
      const alike = draws.find(
        (_, other) =>
          states === at(lake.options, other).states && option.response === options[other]?.response,
      );
      const priced = () => phasePrices({ phases, structures, option, factors, assumed, rises });
      draws.push(alike ?? foundDraw(numbers, priced(), found.cleanYears ?? 0, states));
    });
    const stream = randomStream(seed, `found/${block}/${index}`);
    const futures = draws.map(({ phases }) => emptyFound(phases.length));
    return {
      futures,
      add: (future, hazards, luck) => {
        const uniform: number[] = [];
        for (let draw = 0; draw < money.horizon * drawsPerYear; draw++) uniform.push(stream.uniform());
        draws.forEach((draw, option) => {
          const result = foundFuture(draw, at(hazards, option), { luck, draws: uniform });
          keep(at(futures, option), future, result);
        });
      },
    };
  };
}

const noFutures = () => Array<number>(futuresPerLake).fill(0);

const emptyFound = (phases: number) => ({
  expected: Array.from({ length: phases }, noFutures),
  cost: Array.from({ length: phases }, noFutures),
  times: { found: noFutures(), tried: noFutures(), contained: noFutures(), returned: noFutures() },
  isFound: noFutures(),
});

function keep(
  { expected, cost, times, isFound }: ReturnType<typeof emptyFound>,
  future: number,
  result: FoundFuture,
): void {
  for (let phase = 0; phase < expected.length; phase++) {
    at(expected, phase)[future] = at(result.expected, phase);
    at(cost, phase)[future] = at(result.cost, phase);
  }
  times.found[future] = result.times.found;
  times.tried[future] = result.times.tried;
  times.contained[future] = result.times.contained;
  times.returned[future] = result.times.returned;
  isFound[future] = Number(result.isFound);
}
