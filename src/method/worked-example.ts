import { at } from "../lists.js";
import { bareSurface, type Layer } from "../model/mussels/layer.js";
import type { Structure } from "../model/structures/kinds.js";
import { plantRunning } from "../model/structures/plant/running.js";
import type { StructureResult } from "../model/structures/structure.js";
import type { ReportContext } from "../report/document/context.js";
import { monthName } from "../report/words/month-name.js";
import { typeset } from "../report/words/typeset.js";
import { appendixLetter } from "../study/format/report-schema.js";
import type { MovedCohort } from "./worked/cohorts-of-month.js";
import { growthSheet } from "./worked/growth.js";
import { intakeSheet } from "./worked/intake.js";
import { printed } from "./worked/number.js";
import { layerUnderPlan, type PlannedLayer } from "./worked/plan-layer.js";
import { type Asked, type Setting, settingOf, untouchedLayer } from "./worked/setting.js";
import type { GivenView, Sheet, StepGroup } from "./worked/sheet.js";
import { unitSheet } from "./worked/unit.js";

export interface WorkedExample {
  readonly title: string;
  readonly intro: string;
  readonly given: readonly GivenView[];
  readonly groups: readonly StepGroup[];
  readonly outcome: string;
  /** Whether values stand in the study's units too. */
  readonly hasStudyUnits: boolean;
  /** Of a sheet on growth: each age with its numbers. */
  readonly cohorts: ReadonlyArray<readonly string[]>;
}

/** The first intake whose conduit fouls and the first power plant, or what is asked for, worked step by step. */
export interface WorkedExamples {
  readonly examples: readonly WorkedExample[];
  readonly note: string;
}

const note =
  "A number of five figures is rounded to them, one of fewer is exact. Worked from the printed numbers, each line gives its result to within what these roundings can make of it: one or a few units in the last figure.";

export function workedExamples(context: ReportContext, asked: Asked = { under: "nothing" }): WorkedExamples {
  const setting = settingOf(context, asked);
  const { structures } = context.comparison;
  if (asked.structure !== undefined) {
    const chosen = structures.filter(({ structure }) => structure.id === asked.structure);
    return { examples: chosen.flatMap((each) => exampleOf(each, asked, setting) ?? []), note };
  }
  const firsts = (["intake", "hydropower"] as const).map((kind) =>
    structures
      .filter(({ structure }) => structure.kind === kind)
      .map((each) => exampleOf(each, asked, setting))
      .find((each) => each !== undefined),
  );
  return { examples: firsts.flatMap((each) => each ?? []), note };
}

/** Structures that can be worked, by id and name. */
export const workable = ({ comparison }: ReportContext): { readonly id: string; readonly name: string }[] =>
  comparison.structures
    .filter(
      ({ structure: { kind }, hydraulics }) => partOf(kind) !== undefined && hydraulics.pipes.length > 0,
    )
    .map(({ structure: { id, name } }) => ({ id, name }));

const partOf = (kind: string) =>
  kind === "intake" ? "conduit" : kind === "hydropower" ? "penstock" : undefined;

const largestMonth = (flows: readonly number[]) => flows.indexOf(Math.max(...flows));

function exampleOf(result: StructureResult, asked: Asked, setting: Setting): WorkedExample[] | undefined {
  const { structure, hydraulics } = result;
  const entered = setting.context.run.document.structures.find(({ id }) => id === structure.id);
  const part = partOf(structure.kind);
  const pipe = hydraulics.pipes.find((each) => each.part === part);
  if (part === undefined || !pipe) return undefined;
  const flows = flowsOf(structure);
  const found = layersOf(result, { part, asked, flows }, setting);
  const { layer, onRack, planned } = found;
  const isClosed = layer !== undefined && 2 * layer.thickness >= pipe.clean.bore;
  const about = { part, result, state: setting.state, isClosed, layer: layer ?? bareSurface };
  const growth = growthOf(planned, about, setting);
  if (structure.kind === "intake" && entered?.kind === "intake" && layer) {
    const month = found.month ?? hydraulics.pumps[0]?.month ?? largestMonth(flows);
    const title = `${structure.name}: from demand to cost`;
    if (at(flows, month) === 0) return [standing(title, month), ...growth];
    const sheet = intakeSheet({ intake: structure, entered, layer, onRack, pipe, month }, setting);
    return [view(sheet, { ...about, title, month }), ...growth];
  }
  if (structure.kind !== "hydropower" || entered?.kind !== "hydropower") return undefined;
  const month = found.month ?? largestMonth(flows);
  const title = `${structure.name}: one unit from head to energy`;
  if (at(flows, month) === 0) return [standing(title, month), ...growth];
  const sheet = unitSheet({ plant: structure, entered, layer: about.layer, pipe, month }, setting);
  return [view(sheet, { ...about, title, month }), ...growth];
}

/** Flow while water runs, by month. */
const flowsOf = (structure: Structure): readonly number[] => {
  if (structure.kind === "intake") return structure.demand;
  return structure.kind === "hydropower" ? plantRunning(structure).flow : [];
};

/** A month in which no water runs. */
const standing = (title: string, month: number): WorkedExample => ({
  title,
  intro: `Month ${monthName(month)}.`,
  ...{ given: [], groups: [], cohorts: [], hasStudyUnits: false },
  outcome: "No water runs in this month, so that nothing is lost in it. Choose another month.",
});

interface FoundLayers {
  readonly layer: Layer | undefined;
  readonly onRack: Layer | undefined;
  readonly month: number | undefined;
  readonly planned: PlannedLayer | undefined;
}

/** Layers as asked for: of parts that nobody cleans, at their thickest, or of a month under the plans that costs follow. */
function layersOf(
  result: StructureResult,
  { part, asked, flows }: { readonly part: string; readonly asked: Asked; readonly flows: readonly number[] },
  { lake }: Setting,
): FoundLayers {
  if (asked.under === "nothing") {
    const onRack = untouchedLayer(result, "trash rack");
    return { layer: untouchedLayer(result, part), onRack, month: asked.month, planned: undefined };
  }
  const running = flows.flatMap((flow, month) => (flow > 0 ? [month] : []));
  const under = (name: string, months: readonly number[]) => {
    const plan = result.components.find((each) => each.name === name)?.chosen.plan;
    return plan && layerUnderPlan(result.structure, name, { plan, context: lake, months });
  };
  const planned = under(part, asked.month === undefined ? running : [asked.month]);
  const month = planned && planned.month % 12;
  const onRack = month === undefined ? undefined : under("trash rack", [month])?.layer;
  return { layer: planned?.layer, onRack, month, planned };
}

interface About {
  readonly part: string;
  readonly result: StructureResult;
  readonly state: Setting["state"];
  readonly isClosed: boolean;
  readonly layer: Layer;
}

const planLabel = ({ result, part }: About) =>
  result.components.find(({ name }) => name === part)?.chosen.plan.label ?? "";

function view(
  { given, groups }: Sheet,
  about: About & { readonly title: string; readonly month: number },
): WorkedExample {
  const { part, month, layer, state } = about;
  const isUnderPlan = state === "under its plan";
  const layerText = isUnderPlan
    ? `layer at the end of the month under the plan that its costs follow, “${planLabel(about)}”, in a mature infestation`
    : "layer of a mature infestation at its thickest if nobody cleans";
  const bare = isUnderPlan
    ? "The wall is bare at the end of this month. "
    : `Nothing settles in this ${part} as it runs. `;
  const plan = isUnderPlan
    ? `The cost lines of the study's report (appendix ${appendixLetter("cost-lines")}) add such months over the years.`
    : `The plan chosen for this ${part} is “${planLabel(about)}”; the cost lines of the study's report (appendix ${appendixLetter("cost-lines")}) follow the layer under that plan month by month, by the same steps.`;
  return {
    title: about.title,
    intro: `Month ${monthName(month)}; ${layerText}. Worked in SI units.`,
    given,
    groups,
    outcome: `${layer.thickness === 0 ? bare : ""}${about.isClosed ? `The layer closes the ${part}: nothing passes. ` : ""}${plan}`,
    hasStudyUnits: hasStudyUnits(given),
    cohorts: [],
  };
}

const hasStudyUnits = (given: readonly GivenView[]) => given.some(({ inStudyUnit }) => inStudyUnit !== "");

/** How the layer of the sheet came to be: the month's growth, step by step. */
function growthOf(planned: PlannedLayer | undefined, about: About, setting: Setting): WorkedExample[] {
  if (!planned || planned.layer.number === 0) return [];
  const { sheet, cohorts } = growthSheet(planned, setting);
  const { given, groups } = sheet;
  const since = planned.month - planned.start + 1;
  const start = planned.start === 0 ? "the lake was infested" : "it was last cleaned";
  return [
    {
      title: `${about.result.structure.name}: growth on the ${about.part}`,
      intro: `The month of ${monthName(planned.month % 12)}, the ${ordinal(since)} since ${start}, under the plan “${planLabel(about)}”: what settled, what lived on, and the layer that the sheet before starts from.`,
      ...{ given, groups, hasStudyUnits: hasStudyUnits(given) },
      outcome: "Mussels that settled in one month are one cohort.",
      cohorts: cohorts.moved.map(cohortRow),
    },
  ];
}

const cohortRow = ({ ageMonths, before, number, length, mass }: MovedCohort): string[] => [
  String(ageMonths),
  ...[before, number, length, mass].map((value) => typeset(printed(value), [])),
];

const ordinals = new Intl.PluralRules("en-US", { type: "ordinal" });
const endings: Readonly<Record<string, string>> = { one: "st", two: "nd", few: "rd", other: "th" };
const ordinal = (count: number) => `${count}${endings[ordinals.select(count)]}`;
