import { at } from "../../lists.js";
import type { TornadoBar } from "./odds.js";
import { hydrologicYearId } from "./odds.js";
import { atEnd, endShares, type InputGroup, ownValues, setOf, valueAtEnd } from "./sensitivity-moves.js";
import { netBenefitsOf, type RunPoints, type ValueSet } from "./sensitivity-points.js";
import type { NamedInput } from "./uncertain-inputs.js";

interface Tornado {
  /** With the study's own values. */
  readonly netBenefit: number;
  readonly bars: readonly TornadoBar[];
}

/** What moves the net benefit by less than a cent moves nothing. */
const leastWidth = 0.01;

/** From the least to the greatest net benefit of a bar, that of the study's own values among them. */
export function barWidth({ low, high }: TornadoBar, netBenefit: number): number {
  const all = [low.netBenefit, high.netBenefit, netBenefit];
  return Math.max(...all) - Math.min(...all);
}

/**
 * Net benefit with one input at a time, or one group of them, at its low and at its high end, all else at the study's own
 * values; each by the whole model. Widest first; what moves nothing is left out.
 *
 * Both ends of all inputs are worked out, in one batch. Trying one end first would spare a third of the lakes, but plans
 * of protection change in steps: inputs that do nothing at one end have bars among the widest.
 */
export async function tornado(
  inputs: readonly NamedInput[],
  groups: readonly InputGroup[],
  run: RunPoints,
): Promise<Tornado> {
  const singles = inputs.filter(({ id }) => id !== hydrologicYearId).map(inputPlan);
  const others = [...groups.map(groupPlan), ...inputs.flatMap(yearPlan)];
  const plans = [...singles, ...others];
  const [netBenefit = 0, ...found] = await netBenefitsOf(
    [ownValues, ...plans.flatMap(({ sets }) => sets)],
    run,
  );
  let from = 0;
  const bars = plans.map(({ sets, barOf }) => {
    const own = found.slice(from, from + sets.length);
    from += sets.length;
    return barOf(own);
  });
  return {
    netBenefit,
    bars: bars
      .filter((bar) => barWidth(bar, netBenefit) >= leastWidth)
      .toSorted((one, other) => barWidth(other, netBenefit) - barWidth(one, netBenefit)),
  };
}

/** The values that a bar asks for, and how it comes from the net benefits at them. */
interface BarPlan {
  readonly sets: readonly ValueSet[];
  readonly barOf: (netBenefits: readonly number[]) => TornadoBar;
}

function inputPlan(input: NamedInput): BarPlan {
  const { id, name } = input;
  return {
    sets: [atEnd([input], "low"), atEnd([input], "high")],
    barOf: (found) => ({
      id,
      name,
      low: { input: valueAtEnd(input, "low"), netBenefit: at(found, 0) },
      high: { input: valueAtEnd(input, "high"), netBenefit: at(found, 1) },
    }),
  };
}

function groupPlan({ id, name, members }: InputGroup): BarPlan {
  return {
    sets: [atEnd(members, "low"), atEnd(members, "high")],
    barOf: (found) => ({
      id,
      name: `${name}, together`,
      members: members.map((member) => member.id),
      low: { input: endShares.low, netBenefit: at(found, 0) },
      high: { input: endShares.high, netBenefit: at(found, 1) },
    }),
  };
}

/** Years have no order: their bar runs from the year with the least net benefit to that with the greatest. */
function yearPlan(input: NamedInput): BarPlan[] {
  const { id, name, distribution } = input;
  if (id !== hydrologicYearId || distribution.kind !== "discrete") return [];
  const places = distribution.values.map(({ value }) => value);
  return [
    {
      sets: places.map((place) => setOf([[input, place]])),
      barOf: (found) => {
        const ranked = places
          .map((place, index) => ({ input: place, netBenefit: at(found, index) }))
          .toSorted((one, other) => one.netBenefit - other.netBenefit);
        return { id, name, low: at(ranked, 0), high: at(ranked, ranked.length - 1) };
      },
    },
  ];
}
