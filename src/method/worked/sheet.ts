import { symbolHtml, typeset } from "../../report/words/typeset.js";
import { printed } from "./number.js";
import { inUnitsOf } from "./study-unit.js";
import { substitute } from "./substitute.js";

export interface GivenView {
  readonly symbol: string;
  readonly meaning: string;
  readonly entered: string;
  readonly value: string;
  readonly unit: string;
  /** In the study's units, where those are others. */
  readonly inStudyUnit: string;
}

interface StepView {
  readonly name: string;
  /** HTML of the formula and of the same with numbers put in. */
  readonly formula: string;
  readonly numbers: string;
  /** The numbers as plain text; empty where the step takes a value instead of reckoning it. */
  readonly substitution: string;
  readonly result: string;
  /** The result as plain text. */
  readonly resultText: string;
  readonly unit: string;
  /** In the study's units, where those are others. */
  readonly inStudyUnit: string;
}

export interface StepGroup {
  readonly title: string;
  readonly steps: readonly StepView[];
}

interface Step {
  readonly name: string;
  /** What the step gives, `D_f`; absent where only the number is wanted. */
  readonly symbol?: string;
  /** Right side in symbols; absent where the value is taken. */
  readonly is?: string;
  readonly value: number;
  readonly unit: string;
}

interface Given {
  readonly symbol: string;
  readonly meaning: string;
  /** As the study has it, or where it comes from. */
  readonly entered: string;
  readonly value: number;
  readonly unit: string;
}

/** A sheet of reckoning: values by symbol, to which each step adds its own. */
export interface Sheet {
  readonly given: readonly GivenView[];
  readonly groups: readonly StepGroup[];
  readonly give: (given: Given) => void;
  readonly group: (title: string) => void;
  readonly step: (step: Step) => void;
}

export function newSheet(system: "us" | "si"): Sheet {
  const numbers = new Map<string, string>();
  const symbols: string[] = [];
  const given: GivenView[] = [];
  const groups: Array<{ title: string; steps: StepView[] }> = [];
  const learn = (symbol: string, value: number, suffix = "") => {
    symbols.push(symbol);
    numbers.set(symbol.replace("_", ""), `${printed(value)}${suffix}`);
  };
  return {
    given,
    groups,
    give: ({ symbol, meaning, entered, value, unit }) => {
      learn(symbol, value, unit === "°" ? "°" : "");
      const inStudyUnit = inUnitsOf(system, value, unit);
      given.push({
        ...{ meaning, entered, unit, inStudyUnit },
        symbol: symbolHtml(symbol),
        value: typeset(printed(value), []),
      });
    },
    group: (title) => {
      groups.push({ title, steps: [] });
    },
    step: (step) => {
      const view = stepView(step, { symbols, numbers, system });
      if (step.symbol !== undefined) learn(step.symbol, step.value);
      groups.at(-1)?.steps.push(view);
    },
  };
}

function stepView(
  { name, symbol, is, value, unit }: Step,
  known: { symbols: readonly string[]; numbers: ReadonlyMap<string, string>; system: "us" | "si" },
): StepView {
  const left = symbol === undefined ? "" : symbolHtml(symbol);
  const substitution = is === undefined ? "" : substitute(is, known.numbers);
  const right = is === undefined ? "" : typeset(is, known.symbols);
  return {
    name,
    formula: [left, right].filter(Boolean).join(" = "),
    numbers: typeset(substitution, []),
    substitution,
    result: typeset(printed(value), []),
    resultText: printed(value),
    unit,
    inStudyUnit: inUnitsOf(known.system, value, unit),
  };
}
