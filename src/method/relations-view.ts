import { symbolHtml, typeset } from "../report/words/typeset.js";
import type { Formula, Relation, SymbolMeaning } from "./relations/relation.js";
import { relationGroups } from "./relations.js";

export interface RelationGroupView {
  readonly title: string;
  readonly relations: readonly RelationView[];
}

interface RelationView {
  readonly title: string;
  readonly words: string;
  /** HTML of each formula line. */
  readonly formulas: readonly string[];
  readonly where: ReadonlyArray<{ readonly symbol: string; readonly meaning: string }>;
  readonly origin: string;
}

/** The register for print. */
export const relationsView = (): RelationGroupView[] =>
  relationGroups.map(({ title, relations }) => ({ title, relations: relations.map(relationView) }));

function relationView({ title, words, formulas, where, sources, computedBy }: Relation): RelationView {
  const symbols = where.map(([symbol]) => symbol);
  return {
    title,
    words,
    formulas: formulas.map((formula) => formulaHtml(formula, symbols)),
    where: where.map(([symbol, meaning, unit]: SymbolMeaning) => ({
      symbol: symbolHtml(symbol),
      meaning: unit === "" ? meaning : `${meaning}, ${unit}`,
    })),
    origin: `${sources.map((key) => `[${key}]`).join(" ")} ${computedBy.name} in model/${computedBy.file}`,
  };
}

function formulaHtml({ left, text }: Formula, symbols: readonly string[]): string {
  const right = typeset(text, symbols);
  if (left === undefined) return right;
  const isSymbol = symbols.some((symbol) => symbol.replace("_", "") === left);
  return isSymbol ? `${typeset(left, symbols)} = ${right}` : `${left}: ${right}`;
}
