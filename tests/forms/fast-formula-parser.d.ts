declare module "fast-formula-parser" {
  interface Cell {
    readonly sheet: string;
    readonly row: number;
    readonly col: number;
  }
  interface Range {
    readonly sheet: string;
    readonly from: { readonly row: number; readonly col: number };
    readonly to: { readonly row: number; readonly col: number };
  }
  class DepParser {
    parse(formula: string, place: Cell): FormulaParser.Named[];
  }
  class FormulaParser {
    constructor(reading: {
      functions?: Readonly<Record<string, (...values: { readonly value: unknown }[]) => number>>;
      onCell: (cell: Cell) => unknown;
      onRange: (range: Range) => unknown[][];
    });
    parse(formula: string, place: Cell): unknown;
    static readonly DepParser: typeof DepParser;
  }
  namespace FormulaParser {
    type Named = Cell | Range;
  }
  export = FormulaParser;
}
