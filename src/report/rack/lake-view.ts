import type { StructureResult } from "../../model/structures/structure.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { doubtText } from "./habitat-doubt.js";
import { type KindCaution, kindCautions } from "./kind-cautions.js";
import { dryRunsTable, levelFacts, levelsTable } from "./levels-view.js";
import { everyRegisterTable, registerTable } from "./register.js";
import { type SchematicView, schematicView } from "./schematic.js";
import { runnerUpOf } from "./tried-plans.js";

export interface LakeView {
  readonly description: string;
  readonly facts: readonly string[];
  readonly suitability: string;
  readonly levels: TableView;
  /** Absent where nothing hangs dry. */
  readonly dryRuns: TableView | undefined;
  /** Absent where no structure has an elevation. */
  readonly schematic: SchematicView | undefined;
  readonly register: TableView;
  /** Absent where the other table has every structure. */
  readonly everyRegister: TableView | undefined;
  /** Under the register. */
  readonly cautions: readonly KindCaution[];
  readonly classes: TableView;
  readonly structures: TableView;
}

export function lakeView(context: ReportContext): LakeView {
  return {
    description: context.run.document.lake.description,
    facts: levelFacts(context),
    suitability: [suitabilityText(context), doubtText(context.run)].filter(Boolean).join(" "),
    levels: levelsTable(context),
    dryRuns: dryRunsTable(context),
    schematic: schematicView(context),
    register: registerTable(context),
    everyRegister: everyRegisterTable(context),
    cautions: kindCautions(context),
    classes: classesTable(context),
    structures: structuresTable(context),
  };
}

/** A measured value in the study's units. */
function measuredText({ value, unit }: { value: number; unit: string }, { format }: ReportContext): string {
  return unit === "°C"
    ? `${significant(format.display(value, "temperature"), 3)} ${format.unit("temperature")}`
    : `${significant(value, 3)} ${unit}`;
}

function suitabilityText(context: ReportContext): string {
  const { comparison, run } = context;
  const { limiting, weight, otherCalciumScheme } = comparison.lake.suitability;
  const scheme =
    run.document.lake.calciumScheme === "whittier" ? "Whittier and others 2008" : "Mackie and Claudi 2010";
  const other =
    run.document.lake.calciumScheme === "whittier"
      ? "Mackie and Claudi 2010 (from memory)"
      : "Whittier and others 2008";
  const { variables } = comparison.lake.suitability;
  const isTied = variables.length > 1 && variables.every((each) => each.weight === weight);
  const ruling = isTied
    ? "no variable limits it"
    : `${limiting.variable} is the limiting factor, at ${measuredText(limiting, context)} (weight ${significant(weight, 2)})`;
  return `Habitat suitability for ${run.document.lake.species} mussels is ${limiting.class}; ${ruling}. Calcium classes are those of ${scheme}; by ${other} the calcium class would be ${otherCalciumScheme.class}.`;
}

function classesTable(context: ReportContext): TableView {
  const { comparison } = context;
  return {
    id: "table-suitability",
    caption: "Habitat suitability by variable; the least suitable is the limiting factor",
    head: head("Variable", num("Value"), "Class", num("Weight")),
    rows: comparison.lake.suitability.variables.map((each) =>
      row(each.variable, num(measuredText(each, context)), each.class, num(significant(each.weight, 2))),
    ),
    compact: true,
  };
}

/** How each part of each structure fouls and how it is kept in service. */
function structuresTable(context: ReportContext): TableView {
  const { comparison, format } = context;
  const isPrescribed = comparison.structures.some(({ components }) =>
    components.some(({ pinned }) => pinned !== undefined),
  );
  const plan = `The plan is the cheapest that keeps the part within its limits${isPrescribed ? ", or the one that the study prescribes" : ""}`;
  return {
    id: "table-upkeep",
    caption: "What would foul, and the plan that keeps each part in service",
    head: head(
      "Part",
      num(`Layer if left, ${format.unit("areaMass")}`),
      num(`Thickness if left, ${format.unit("smallLength")}`),
      "Plan",
      num("Cost a year"),
      "Runner-up",
      num("Cost a year"),
    ),
    rows: comparison.structures.flatMap((result) => structureRows(result, context)),
    note: `${plan}; the appendix “Keeping each part in service” has the others. Costs in a mature infestation, prices of ${context.priceYear}, with the losses that remain under the plan. Layers are the thickest in a year of a mature infestation that nobody cleans. Plans that break a limit (head loss, velocity, closed gaps, layer, cooling water, weight) are left out.`,
    compact: true,
  };
}

const isSwept = ({ years }: StructureResult) =>
  years.some((lines) => lines.some(({ what }) => what === "sweeping"));

function structureRows(result: StructureResult, context: ReportContext): RowView[] {
  const { structure, components, litter } = result;
  const rows = components.map((component) => {
    const { chosen, pinned, untouchedLayer } = component;
    const runnerUp = runnerUpOf(component);
    return row(
      component.name,
      num(context.format.number(untouchedLayer.mass, "areaMass")),
      num(context.format.number(untouchedLayer.thickness, "smallLength")),
      `${chosen.plan.label}${pinned ? " (prescribed)" : ""}${chosen.brokenLimit ? `; ${chosen.brokenLimit}` : ""}`,
      num(context.format.money(chosen.yearlyCost)),
      runnerUp?.plan.label ?? "none",
      num(runnerUp ? context.format.money(runnerUp.yearlyCost) : "–"),
    );
  });
  const mature = litter.at(-1);
  if (mature) {
    rows.push(
      row(
        "dead shell on the ramp, a year",
        num("–"),
        num(context.format.number(mature.thickness, "smallLength")),
        isSwept(result) ? "swept, ramp closed meanwhile" : "too little to sweep",
        num("–"),
        "–",
        num("–"),
      ),
    );
  }
  return rows.length === 0
    ? []
    : [groupRow(`${structure.name} (${context.bearerName(structure.bearer)})`), ...rows];
}
