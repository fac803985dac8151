import { at } from "../../lists.js";
import type { ShapeVariant, TracedChance } from "../../study/traced/traced-chance.js";
import type { ReportContext } from "../document/context.js";
import { ratioCell } from "../words/balance-signs.js";
import { percent, significant } from "../words/format.js";
import { groupRow, head, num, row, type TableView } from "../words/view-types.js";

type Tenths = TracedChance["estimate"]["unknown"];

/** What the counts say of one fouled launch and of one lake. */
export function estimatesTable({ estimate }: TracedChance): TableView {
  const { near, far, unknown, perLivingLaunch, between, openLake, inspectedLake } = estimate;
  return {
    id: "table-chance-estimates",
    caption: "What the counts say: percentiles",
    head: head("Estimate", num("10th"), num("Median"), num("90th")),
    rows: [
      groupRow("Chance that one fouled launch founds a population"),
      tenthsRow("Hours to two days out of infested water", near),
      tenthsRow("Weeks away, or long dry", far),
      tenthsRow("Origin unknown: a region not among those counted", unknown),
      tenthsRow("Origin unknown, per launch with living mussels", perLivingLaunch),
      groupRow("Rate of one lake a year"),
      tenthsRow("Open region, average lake", openLake),
      tenthsRow("Region with checks", inspectedLake),
      groupRow("Spread between regions"),
      row(
        "Standard deviation of the logarithm of the chance",
        ...[between.p10, between.p50, between.p90].map((each) => num(significant(each, 2))),
      ),
    ],
    note: "The figure lies between the 10th and the 90th in four of five cases. A study may leave regions out.",
    compact: true,
  };
}

const tenthsRow = (name: string, { p10, p50, p90 }: Tenths) =>
  row(name, ...[p10, p50, p90].map((each) => num(percent(each))));

/** The chance and the ratio of each option where foundings go with launches, and where many act together. */
export function shapesTable({ comparison }: ReportContext, { shapes }: TracedChance): TableView {
  const used = shapes.find(({ isUsed }) => isUsed)?.shape ?? 1;
  return {
    id: "table-chance-shapes",
    caption: "By strength of the group-arrival effect",
    head: head("Option", ...shapes.flatMap(({ shape }) => shapeHead(shape))),
    rows: [
      row(
        comparison.baseline.option.name,
        ...shapes.flatMap((each) => [num(percent(each.baseline.hazard)), num("")]),
      ),
      ...comparison.options.map(({ result }, index) =>
        row(
          result.option.name,
          ...shapes.flatMap((variant) => shapeCells(variant, index, comparison.discountFactors)),
        ),
      ),
    ],
    note: `The answer uses ${significant(used, 3)}; at 1 each launch counts by itself. The effect is reported (Leung, Drake and Lodge 2004), but its size is not known: the others are variants. All agree at the launches of assumption arrival.reference-launches.`,
    compact: true,
  };
}

const shapeHead = (shape: number) => [num(`With ${shape}: a year`), num("ratio")];

function shapeCells({ options }: ShapeVariant, index: number, discountFactors: readonly number[]) {
  const option = at(options, index);
  return [num(percent(option.result.hazard)), num(ratioCell(option, discountFactors))];
}
