import type { TornadoBar } from "../../study/odds/odds.js";
import { hydrologicYearId } from "../../study/odds/odds.js";
import { rangedQuantities } from "../../study/reading/ranged.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { inputText } from "../words/input-text.js";

/** What the report calls an input: an id of an assumption as words, any other name as it is. */
export const inputName = (name: string): string =>
  /^[a-z0-9.-]+$/.test(name) ? name.replaceAll(".", ": ").replaceAll("-", " ") : name;

/** With the number under which appendix C has it. */
export function numberedName(id: string, name: string, { assumptionNumber }: ReportContext): string {
  return [assumptionNumber(id), inputName(name)].filter(Boolean).join(" ");
}

/** The low and the high value of an input, in the unit in which the reader gave or finds it. */
export function inputSpan({ id, low, high }: TornadoBar, context: ReportContext): string {
  const { run, format } = context;
  const span = (text: (value: number) => string, unit = "") =>
    [`${text(low.input)}–${text(high.input)}`, unit].filter(Boolean).join(" ");
  if (id === hydrologicYearId) return `year ${low.input + 1} to ${high.input + 1} of the record`;
  const entry = run.assumptions.entries.get(id);
  if (entry?.unit === "share") return span(percent);
  if (entry) {
    const unit = entry.unit === "1" ? "" : entry.unit.replace("$", run.document.money.currency);
    return span((value) => significant(value, 3), unit);
  }
  const ranged = rangedQuantities(run.document).find((each) => each.id === id);
  if (!ranged) {
    const isTyped = run.typed().some((each) => each.id === id);
    const reading = { format, assumptions: run.assumptions, document: run.document, typed: run.typed };
    return isTyped
      ? [low, high].map(({ input }) => inputText(id, input, reading)).join(" to ")
      : span(percent);
  }
  const { dimension } = ranged.quantity;
  return span((value) => format.number(value, dimension), format.unit(dimension));
}
