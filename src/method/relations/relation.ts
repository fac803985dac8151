/** A relation that the model computes, as a reader of the method document may check it. */
export interface Relation {
  readonly title: string;
  /** The relation in words. Repeats no assumption's value: a study may override any. */
  readonly words: string;
  readonly formulas: readonly Formula[];
  readonly where: readonly SymbolMeaning[];
  /** Keys of `assumptions/sources.yaml`. */
  readonly sources: readonly string[];
  readonly computedBy: ModelFunction;
}

/** Written as in the code's comments: `V²/2g`, `^(4/3)`, `log₁₀`, `√`; symbols without their underscore. */
export interface Formula {
  /** What the formula gives, where the comment of the function has the right side alone. */
  readonly left?: string;
  readonly text: string;
}

/** `k_F` is k with the index F and stands as `kF` in formulas. The unit of a pure number is empty. */
export type SymbolMeaning = readonly [symbol: string, meaning: string, unit: string];

interface ModelFunction {
  /** Path under `src/model`. */
  readonly file: string;
  readonly name: string;
}

export interface RelationGroup {
  readonly title: string;
  readonly relations: readonly Relation[];
}

/** A formula that the function's comment states word for word, to which a test holds it. */
export const coded = (text: string, left?: string): Formula => ({
  text,
  ...(left === undefined ? {} : { left }),
});

export const by = (file: string, name: string): ModelFunction => ({ file, name });

export const gravityMeaning: SymbolMeaning = ["g", "standard gravity, 9.81", "m/s²"];
