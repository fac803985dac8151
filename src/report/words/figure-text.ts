import { counted } from "../../counted.js";
import { type FigureName, figures } from "../../study/compared/figures.js";
import { type Formatter, percent, ratio } from "./format.js";

/** A figure of the board's page as it is printed; "none" where there is none. */
export function figureText(figure: FigureName, value: number | undefined, format: Formatter): string {
  if (value === undefined) return "none";
  switch (figures[figure].kind) {
    case "money":
      return format.money(value);
    case "share":
      return percent(value, 3);
    case "ratio":
      return ratio(value);
  }
}

/** With its sign; of shares in percentage points. */
export function changeText(figure: FigureName, change: number, format: Formatter): string {
  const size = Math.abs(change);
  const text =
    figures[figure].kind === "share"
      ? counted(percent(size, 2).replace("%", ""), "point")
      : figureText(figure, size, format);
  return `${change < 0 ? "−" : "+"}${text}`;
}
