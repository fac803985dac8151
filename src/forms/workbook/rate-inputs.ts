import { counted } from "../../counted.js";
import type { CostLine } from "../../model/money/line.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { ReportContext } from "../../report/document/context.js";
import { capitalised, lineDimensions } from "../../report/words/format.js";
import type { YearlyLine } from "../../study/traced/yearly-lines.js";
import { plus, times, type Worked } from "./formula.js";
import type { InputList } from "./input-sheet.js";
import { capitalRecovery } from "./money-inputs.js";

export interface RateInputs {
  /** The unit rate of a line, in the study's units. */
  readonly of: (line: YearlyLine) => Worked;
  /** The same of another cost of a structure, where one of its lines has this rate. */
  readonly ofStructure: (line: CostLine) => Worked | undefined;
  /** Where a price of the assumptions stands among the inputs, and how much of its own unit one of the study's is. */
  readonly byAssumption: ReadonlyMap<AssumptionId, { readonly cell: Worked; readonly perUnit: number }>;
}

const forcedFactorId: AssumptionId = "limit.forced-factor";

interface RateParts {
  /** Of discount. */
  readonly rate: Worked;
  readonly used: (id: AssumptionId) => Worked;
  /** Name of the schedule under which a line occurs; none for the lake's own levels. */
  readonly scheduleOf: (line: YearlyLine) => string | undefined;
}

interface RateDraft {
  readonly name: string;
  readonly origin: string;
  readonly amount: number;
  readonly line: YearlyLine;
}

/** Unit rates of the damage, each once: lines that share one name the same cell. */
export function rateInputs(
  inputs: InputList,
  lines: readonly YearlyLine[],
  context: ReportContext,
  parts: RateParts,
): RateInputs {
  if (lines.length > 0) inputs.section("Unit rates of the damage, and capital of protection");
  const cells = new Map<string, Worked>();
  const byAssumption = new Map<AssumptionId, { cell: Worked; perUnit: number }>();
  for (const [key, [line, ...others]] of linesByKey(lines)) {
    const cell = addRate(inputs, draftOf(line, others, { ...parts, run: context.run }), context);
    cells.set(key, cell);
    if (line.rate.by === "price") {
      byAssumption.set(line.rate.id, { cell, perUnit: cell.result / line.rate.price });
    }
  }
  return {
    byAssumption,
    ofStructure: (line) => cells.get(context.traced.rateKey(line)),
    of: (line) => {
      const cell = cells.get(keyOf(line));
      if (!cell) throw new Error(`no rate of ${line.sample.what}`);
      return rateFormula(line, cell, parts);
    },
  };
}

function keyOf({ rate, sample }: YearlyLine): string {
  if (rate.by === "price") return JSON.stringify(["price", rate.id, sample.quantityKind]);
  if (rate.by === "own") return rate.key;
  return JSON.stringify(["capital", sample.structure, sample.what, rate.capital.toPrecision(9)]);
}

/** Lines that share a rate, in the order of the first of each. */
function linesByKey(lines: readonly YearlyLine[]): Map<string, [YearlyLine, ...YearlyLine[]]> {
  const byKey = new Map<string, [YearlyLine, ...YearlyLine[]]>();
  for (const line of lines) {
    const key = keyOf(line);
    const known = byKey.get(key);
    if (known) known.push(line);
    else byKey.set(key, [line]);
  }
  return byKey;
}

/** @param more lines with the same rate, under other schedules too */
function draftOf(
  line: YearlyLine,
  more: readonly YearlyLine[],
  { run, scheduleOf }: Pick<ReportContext, "run"> & Pick<RateParts, "scheduleOf">,
): RateDraft {
  const { rate, structureName, sample } = line;
  const wordsOf = (each: YearlyLine) => `${each.sample.structure} ${each.sample.what}`;
  const count = new Set(more.map(wordsOf).filter((each) => each !== wordsOf(line))).size;
  const others = count > 0 ? `, and ${counted(count, "line")} more` : "";
  const schedule = scheduleOf(line);
  const under = schedule === undefined ? "" : `, under “${schedule}”`;
  if (rate.by === "price") {
    const title = run.assumptions.entries.get(rate.id)?.title;
    const own = run.overrides.some(({ entry }) => entry.id === rate.id);
    return {
      name: capitalised(title ?? rate.id),
      origin: own ? "The study’s own value" : `Assumption ${rate.id}`,
      amount: rate.price,
      line,
    };
  }
  if (rate.by === "capital") {
    const { name, origin } = capitalWords(line);
    return { name: `${name}${under}`, origin, amount: rate.capital, line };
  }
  return {
    name: capitalised(
      rate.of === undefined
        ? `${afterPart(sample.what)}${others}${under}`
        : `${structureName}: ${sample.what}${others}${under}`,
    ),
    origin:
      rate.of === undefined ? "Of several assumptions" : "Of the study, or a mean that the program weighed",
    amount: rate.rate,
    line,
  };
}

const capitalWords = ({ structureName, sample }: YearlyLine) => ({
  name: `${structureName}: ${sample.what}, capital`,
  origin: "By its size, computed by the program; a year of it is its capital recovery and upkeep",
});

/** Without the part before it: "trash rack: disposal" is disposal. */
const afterPart = (what: string) => what.slice(what.lastIndexOf(": ") + 1).trim();

function addRate(
  inputs: InputList,
  { name, origin, amount, line }: RateDraft,
  context: ReportContext,
): Worked {
  const { quantityKind } = line.sample;
  const isCapital = line.rate.by === "capital";
  const dimension = lineDimensions[quantityKind].rate;
  const shown = isCapital ? amount : context.format.display(amount, dimension);
  return inputs.add({
    ...{ name, origin, amount: shown, look: "exact" },
    unit: isCapital ? context.run.document.money.currency : rateUnit(line.sample, context),
  });
}

/** The unit of a unit rate. */
export function rateUnit({ quantityKind }: CostLine, { format, run }: ReportContext): string {
  const { currency } = run.document.money;
  const { quantity, unit } = lineDimensions[quantityKind];
  return quantityKind === "each" ? `${currency} each` : `${currency} per ${unit ?? format.unit(quantity)}`;
}

function rateFormula({ rate }: YearlyLine, cell: Worked, parts: Pick<RateParts, "rate" | "used">): Worked {
  if (rate.by === "price") return rate.isForced ? times(cell, parts.used(forcedFactorId)) : cell;
  if (rate.by === "own") return cell;
  return times(cell, plus(capitalRecovery(parts.rate, parts.used(rate.life)), parts.used(rate.upkeep)));
}
