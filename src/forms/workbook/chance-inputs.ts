import { at } from "../../lists.js";
import type { OtherWay } from "../../model/inputs.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { ReportContext } from "../../report/document/context.js";
import type { Worked } from "./formula.js";
import type { InputList } from "./input-sheet.js";

/** A way in beside the boats that launch. */
export interface WayInputs {
  readonly way: OtherWay;
  readonly chance: Worked;
  /** Calendar year from which its source is infested, and the yearly chance that it becomes so. */
  readonly from: Worked | undefined;
  readonly sourceChance: Worked | undefined;
}

export interface ChanceInputs {
  /** Yearly chance by the boats without a program. */
  readonly boats: Worked;
  readonly ways: readonly WayInputs[];
  /** Where the study names no ways: share of all foundings that come by them. */
  readonly otherShare: Worked | undefined;
  /** What clean years make of the rates of the named ways. */
  readonly learned: Worked | undefined;
}

export const otherShareId: AssumptionId = "arrival.other-share";

/** None where the lake is infested already. */
export function chanceInputs(inputs: InputList, context: ReportContext): ChanceInputs | undefined {
  const { comparison, run, infestedSince } = context;
  if (infestedSince !== undefined || !run.chance) return undefined;
  const { ofBoats } = comparison.rates;
  const { otherWays } = comparison.input.boats;
  inputs.section("Yearly chances without a program");
  const boats = inputs.add({
    name: "Chance of infestation through boats, without a program",
    amount: -Math.expm1(-ofBoats * comparison.baseline.arrivals.foundings),
    look: "percent",
    unit: "a year",
    origin: "From the study’s boats, comparable lakes and clean years; see the report’s appendix on chances.",
  });
  const ways = (otherWays ?? []).map((way) => wayInputs(inputs, way, context));
  return {
    boats,
    ways,
    otherShare: otherWays ? undefined : otherShare(inputs, context),
    learned: ways.length > 0 && comparison.input.boats.learned ? learnedFactor(inputs, context) : undefined,
  };
}

function wayInputs(inputs: InputList, way: OtherWay, { comparison }: ReportContext): WayInputs {
  const { startYear } = comparison.input.money;
  const { name, chance, fromYear = 0, sourceChance } = way;
  const perYear = { look: "percent", unit: "a year" } as const;
  return {
    way,
    chance: inputs.add({
      ...{ name: `${name}: chance while its source is infested`, amount: chance, ...perYear },
      origin: way.checked ? "Stations check it too." : "No check stops it.",
    }),
    from:
      fromYear === 0
        ? undefined
        : inputs.add({
            ...{ name: `${name}: its source is infested from`, amount: startYear + fromYear, look: "whole" },
          }),
    sourceChance:
      sourceChance === undefined
        ? undefined
        : inputs.add({
            ...{ name: `${name}: chance that its source becomes infested`, amount: sourceChance, ...perYear },
          }),
  };
}

const otherShare = (inputs: InputList, { traced }: ReportContext) =>
  inputs.add({
    name: "Share of all foundings without a program that come by other ways than boats",
    amount: traced.used(otherShareId),
    look: "percent",
  });

/** Ratio of the rates used to those of the ways as they were entered. */
function learnedFactor(inputs: InputList, { comparison, horizon }: ReportContext): Worked {
  const { rates, input } = comparison;
  const entered = (input.boats.otherWays ?? []).map(({ chance, fromYear = 0, sourceChance }) =>
    horizon - 1 < fromYear
      ? 0
      : -Math.log1p(-chance) *
        (sourceChance === undefined ? 1 : 1 - (1 - sourceChance) ** (horizon - fromYear)),
  );
  const all = entered.reduce((sum, each) => sum + each, 0);
  const used = at(rates.unchecked, horizon - 1) + at(rates.checked, horizon - 1);
  return inputs.addComputed({
    name: "Factor of the years without mussels on the rates of these ways",
    amount: all > 0 && Number.isFinite(all) ? used / all : 1,
    look: "factor",
  });
}
