import type { CheckSteps, ProgramOption, ProgramSteps } from "../../model/inputs.js";
import { number, type Worked } from "./formula.js";
import type { InputList } from "./input-sheet.js";

type StepNames = keyof CheckSteps;

/** The steps of an option, with what works otherwise for single classes. */
export interface StepInputs {
  readonly steps: ProgramSteps;
  readonly coverage: Worked;
  readonly deterrence: Worked;
  readonly refusal: Worked;
  /** Share of the boats held that must dry, and of their mussels those that outlive it; absent where none must. */
  readonly hold: { readonly share: Worked; readonly outlives: Worked } | undefined;
  readonly check: Readonly<Record<StepNames, Worked>>;
  /** By the id of a class; absent where all is as for other classes. */
  readonly byClass: ReadonlyMap<string, Partial<Readonly<Record<StepNames, Worked>>>>;
  readonly seals: ReadonlyMap<string, Worked>;
}

export interface OptionInputs {
  /** Share of the program that goes on once mussels are known. */
  readonly keptShare: Worked;
  /** Of its first years. */
  readonly growth: ReadonlyArray<{ readonly reach: Worked; readonly cost: Worked }>;
  readonly steps: StepInputs | undefined;
  readonly attempt:
    | { readonly cost: Worked; readonly chance: Worked; readonly latestYear: Worked }
    | undefined;
}

const stepWords: Readonly<Record<StepNames, string>> = {
  declaration: "Risky boats that declare themselves",
  quickCheck: "Risky boats not declared that the quick check finds",
  inspection: "Mussels that the full inspection removes",
  hotWash: "Mussels that the hot wash kills or removes",
};
const stepNames: readonly StepNames[] = ["declaration", "quickCheck", "inspection", "hotWash"];

interface Works {
  /** Share of mussels that outlives the option's drying hold, as the program computed it. */
  readonly outlivesHold: number;
  readonly className: (id: string) => string;
  /** Nothing hangs on what an option keeps out of a lake that is infested already. */
  readonly isInfested: boolean;
}

export function optionInputs(
  inputs: InputList,
  option: ProgramOption,
  { outlivesHold, className, isInfested }: Works,
): OptionInputs {
  const { name, afterInfestation, rampUp, steps } = option;
  inputs.section(`“${name}”: how it works`);
  return {
    keptShare: inputs.add({
      name: "Share of its cost that goes on once mussels are known",
      amount: afterInfestation.share,
      look: "percent",
    }),
    growth: rampUp.map(({ reach, cost }, year) => ({
      reach: isInfested
        ? number(reach)
        : inputs.add({ name: `Share of its reach in year ${year + 1}`, amount: reach, look: "percent" }),
      cost: inputs.add({ name: `Share of its cost in year ${year + 1}`, amount: cost, look: "percent" }),
    })),
    steps: steps && !isInfested ? stepInputs(inputs, steps, { outlivesHold, className }) : undefined,
    attempt: attemptInputs(inputs, option),
  };
}

function stepInputs(
  inputs: InputList,
  steps: ProgramSteps,
  { outlivesHold, className }: Omit<Works, "isInfested">,
): StepInputs {
  const share = (name: string, amount: number) => inputs.add({ name, amount, look: "percent" });
  return {
    steps,
    coverage: share("Launches in open hours", steps.coverage),
    deterrence: share("Fouled boats kept away by the checks", steps.deterrence),
    check: {
      declaration: share(stepWords.declaration, steps.declaration),
      quickCheck: share(stepWords.quickCheck, steps.quickCheck),
      inspection: inputs.addShared({ name: stepWords.inspection, amount: steps.inspection, look: "percent" }),
      hotWash: inputs.addShared({ name: stepWords.hotWash, amount: steps.hotWash, look: "percent" }),
    },
    byClass: new Map(
      steps.byClass.map((own) => [
        own.vesselClass,
        Object.fromEntries(
          stepNames.flatMap((step) => {
            const amount = own[step];
            if (amount === undefined) return [];
            return [[step, share(`${className(own.vesselClass)}: ${stepWords[step]}`, amount)]];
          }),
        ),
      ]),
    ),
    seals: new Map(
      steps.seals.map(({ vesselClass, share: sealed }) => [
        vesselClass,
        share(`${className(vesselClass)}: boats with a seal`, sealed),
      ]),
    ),
    refusal: share("Fouled boats held that are turned away", steps.refusal),
    hold:
      steps.hold.share === 0
        ? undefined
        : {
            share: share("Boats held that must dry before they launch", steps.hold.share),
            outlives: inputs.addComputed({
              name: "Share of their mussels that survive drying",
              amount: outlivesHold,
              look: "percent",
            }),
          },
  };
}

function attemptInputs(inputs: InputList, { response }: ProgramOption): OptionInputs["attempt"] {
  if (!response) return undefined;
  const { name, cost, chance, latestYear } = response;
  return {
    cost: inputs.add({ name: `${name}: cost of one attempt`, amount: cost, look: "cents" }),
    chance: inputs.add({ name: `${name}: chance that it succeeds`, amount: chance, look: "percent" }),
    latestYear: inputs.add({
      ...{ name: `${name}: last year of an infestation in which it is tried`, amount: latestYear },
      look: "whole",
    }),
  };
}
