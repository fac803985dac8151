import { at } from "../../lists.js";
import type { OptionResult } from "../../model/option.js";
import type { AssumptionId } from "../../model/register/register.js";
import { allOptions, type ReportContext } from "../../report/document/context.js";
import {
  isSame,
  minus,
  most,
  number,
  oneLess,
  plus,
  power,
  type Stretch,
  sumOfProducts,
  times,
  type Worked,
  when,
} from "./formula.js";
import type { Grid } from "./grid.js";
import type { OptionInputs, StepInputs } from "./option-inputs.js";
import { strong, text, value } from "./sheet.js";

/** Shares of those without a program: of the fouled launches, and of the populations that they would found. */
export interface Through {
  readonly launches: Worked;
  readonly foundings: Worked;
}

interface ThroughParts {
  readonly row: number;
  readonly options: ReadonlyMap<string, OptionInputs>;
  readonly used: (id: AssumptionId) => Worked;
}

const all: Through = { launches: number(1), foundings: number(1) };
const columns = { name: 0, launches: 1, foundings: 2, met: 1, held: 2, missed: 3, through: 4 };
const classHeads = ["Fouled boats by class", "Share of the launches", "Share of the foundings"];
const heads = ["Class", "Met by the station", "Of these held", "Of these missed alive", "Reach the water"];

/** Writes what each option with steps lets through, for every share of its reach that it has while it grows. */
export function writeThrough(sheet: Grid, context: ReportContext, parts: ThroughParts) {
  const blocks = new Map<string, readonly Through[]>();
  const shares = writeClasses(sheet, context, parts.row);
  let row = sheet.height() + 1;
  for (const { option } of allOptions(context)) {
    const own = parts.options.get(option.id);
    if (!own?.steps || context.run.chance?.fouledLaunches === 0) continue;
    const stages = [...own.growth.map(({ reach }) => reach), undefined];
    const steps = own.steps;
    const written = stages.map((reach, index) => {
      const when = index < own.growth.length ? `, year ${index + 1}` : own.growth.length > 0 ? ", grown" : "";
      sheet.put(row, 0, strong(text(`“${option.name}”${when}`)));
      const block = writeBlock(sheet, { shares, used: parts.used, row: row + 1, steps, reach });
      row = sheet.height() + 1;
      return block;
    });
    blocks.set(option.id, written);
  }
  return ({ option }: OptionResult, year: number): Through => {
    const written = blocks.get(option.id);
    return written ? at(written, Math.min(year, written.length - 1)) : all;
  };
}

interface Block extends Pick<ThroughParts, "row" | "used"> {
  readonly shares: WrittenClasses;
  readonly steps: StepInputs;
  readonly reach: Worked | undefined;
}

interface WrittenClasses {
  readonly classes: readonly ClassShares[];
  readonly launches: Stretch;
  readonly foundings: Stretch;
}

function writeClasses(sheet: Grid, context: ReportContext, row: number): WrittenClasses {
  const classes = classShares(context);
  sheet.putRow(
    row,
    classHeads.map((each) => text(each, "head")),
  );
  classes.forEach(({ name, launches, foundings }, index) => {
    sheet.putRow(row + 1 + index, [text(name), value(launches, "percent"), value(foundings, "percent")]);
  });
  const of = (column: number) => sheet.down(column, row + 1, row + classes.length);
  return { classes, launches: of(columns.launches), foundings: of(columns.foundings) };
}

function writeBlock(sheet: Grid, block: Block): Through {
  const { row, used, shares } = block;
  sheet.putRow(
    row,
    heads.map((each) => text(each, "head")),
  );
  shares.classes.forEach((each, index) => {
    writeClass(sheet, row + 1 + index, each, block);
  });
  const last = row + shares.classes.length;
  const through = sheet.down(columns.through, row + 1, last);
  sheet.putRow(last + 1, [
    strong(text("Of the launches and foundings without a program, these reach the water")),
  ]);
  const launches = sheet.put(
    last + 1,
    columns.launches,
    value(sumOfProducts(shares.launches, through), "percent"),
  );
  const together = power(launches, minus(used("arrival.shape"), number(1)));
  const foundings = when(
    isSame(launches, number(0)),
    number(0),
    times(sumOfProducts(shares.foundings, through), together),
  );
  return { launches, foundings: sheet.put(last + 1, columns.foundings, value(foundings, "percent")) };
}

interface ClassShares {
  readonly id: string;
  readonly name: string;
  readonly launches: number;
  readonly foundings: number;
}

/** What each class has of the fouled launches and of the foundings without a program. */
function classShares({ run, comparison }: ReportContext): ClassShares[] {
  const classes = run.chance?.classes ?? [];
  const share = (part: number, of: number) => (of === 0 ? 0 : part / of);
  const launches = classes.reduce((sum, { fouled }) => sum + fouled, 0);
  const foundings = classes.reduce((sum, { fouled, founding }) => sum + fouled * founding, 0);
  return classes.map(({ id, fouled, founding }) => ({
    id,
    name: comparison.input.boats.classes.find((each) => each.id === id)?.name ?? id,
    launches: share(fouled, launches),
    foundings: share(fouled * founding, foundings),
  }));
}

function writeClass(sheet: Grid, row: number, { id, name }: ClassShares, block: Block): void {
  const { steps, reach, used } = block;
  const { check, byClass, seals, coverage, deterrence, refusal, hold } = steps;
  const own = { ...check, ...byClass.get(id) };
  const grown = (share: Worked) => (reach ? times(share, reach) : share);
  const put = (column: number, formula: Worked) => sheet.put(row, column, value(formula, "percent"));
  sheet.put(row, columns.name, text(name));
  const sealed = seals.get(id);
  const met = put(columns.met, sealed ? times(oneLess(sealed), grown(coverage)) : grown(coverage));
  const held = put(columns.held, oneLess(times(oneLess(own.declaration), oneLess(own.quickCheck))));
  const independent = times(oneLess(own.inspection), oneLess(own.hotWash));
  const dependent = oneLess(most(own.inspection, own.hotWash));
  const missed = plus(independent, times(minus(dependent, independent), used("steps.dependence")));
  const alive = put(
    columns.missed,
    hold ? times(missed, oneLess(times(hold.share, oneLess(hold.outlives)))) : missed,
  );
  const stopped = times(met, held, oneLess(times(oneLess(refusal), alive)));
  put(columns.through, times(oneLess(grown(deterrence)), oneLess(stopped)));
}
