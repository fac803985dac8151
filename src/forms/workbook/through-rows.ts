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
  over,
  plus,
  power,
  type Stretch,
  sum,
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
const columns = {
  ...{ name: 0, fouled: 1, founding: 2, launches: 3, foundings: 4 },
  ...{ met: 1, held: 2, missed: 3, through: 4 },
};
const classHeads = [
  ...["Boats by class, without a program", "Fouled launches a year", "Founding by one of them"],
  ...["Share of the launches", "Share of the foundings"],
];
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
  readonly classes: readonly ClassFoundings[];
  readonly launches: Stretch;
  readonly foundings: Stretch;
}

/** What each class brings without a program, and its shares of all. */
function writeClasses(sheet: Grid, context: ReportContext, row: number): WrittenClasses {
  const classes = classFoundings(context);
  const [first, last] = [row + 1, row + classes.length];
  sheet.putRow(
    row,
    classHeads.map((each) => text(each, "head")),
  );
  classes.forEach(({ name, fouled, founding }, index) => {
    const alike = classes.findIndex((each) => each.founding === founding);
    const known = alike < index ? sheet.at(first + alike, columns.founding) : founding;
    sheet.putRow(first + index, [text(name), value(fouled, "exact"), value(known, "exact")]);
  });
  const of = (column: number) => sheet.down(column, first, last);
  const brought = sumOfProducts(of(columns.fouled), of(columns.founding));
  for (let own = first; own <= last; own++) {
    const [fouled, founding] = [columns.fouled, columns.founding].map((column) => sheet.at(own, column));
    if (!fouled || !founding) continue;
    sheet.put(own, columns.launches, value(shareOf(fouled, sum(of(columns.fouled))), "percent"));
    sheet.put(own, columns.foundings, value(shareOf(times(fouled, founding), brought), "percent"));
  }
  return { classes, launches: of(columns.launches), foundings: of(columns.foundings) };
}

const shareOf = (part: Worked, all: Worked) => when(isSame(all, number(0)), number(0), over(part, all));

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

interface ClassFoundings {
  readonly id: string;
  readonly name: string;
  /** Fouled launches a year without a program, and the chance that one founds a population. */
  readonly fouled: number;
  readonly founding: number;
}

const classFoundings = ({ run, comparison }: ReportContext): ClassFoundings[] =>
  (run.chance?.classes ?? []).map((each) => ({
    ...each,
    name: comparison.input.boats.classes.find(({ id }) => id === each.id)?.name ?? each.id,
  }));

function writeClass(sheet: Grid, row: number, { id, name }: ClassFoundings, block: Block): void {
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
