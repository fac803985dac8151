import { bareSurface } from "../model/mussels/layer.js";
import { plantRunning } from "../model/structures/plant/running.js";
import type { StructureResult } from "../model/structures/structure.js";
import type { ReportContext } from "../report/document/context.js";
import { monthName } from "../report/words/month-name.js";
import { appendixLetter } from "../study/format/report-schema.js";
import { intakeSheet } from "./worked/intake.js";
import { type Setting, settingOf, untouchedLayer } from "./worked/setting.js";
import type { GivenView, Sheet, StepGroup } from "./worked/sheet.js";
import { unitSheet } from "./worked/unit.js";

export interface WorkedExample {
  readonly title: string;
  readonly intro: string;
  readonly given: readonly GivenView[];
  readonly groups: readonly StepGroup[];
  readonly outcome: string;
}

/** The first intake whose conduit fouls and the first power plant, worked step by step; as many as there are. */
export interface WorkedExamples {
  readonly examples: readonly WorkedExample[];
  readonly note: string;
}

const note =
  "A number of five figures is rounded to them, one of fewer is exact. Worked from the printed numbers, each line gives its result to within what these roundings can make of it: one or a few units in the last figure.";

export function workedExamples(context: ReportContext): WorkedExamples {
  const setting = settingOf(context);
  const { structures } = context.comparison;
  const firsts = [intakeExample, unitExample].map((exampleOf) =>
    structures.map((each) => exampleOf(each, setting)).find((each) => each !== undefined),
  );
  return { examples: firsts.filter((each) => each !== undefined), note };
}

const largestMonth = (flows: readonly number[]) => flows.indexOf(Math.max(...flows));

function intakeExample(result: StructureResult, setting: Setting): WorkedExample | undefined {
  const { structure, hydraulics } = result;
  const entered = setting.context.run.document.structures.find(({ id }) => id === structure.id);
  const layer = untouchedLayer(result, "conduit");
  const pipe = hydraulics.pipes.find(({ part }) => part === "conduit");
  if (structure.kind !== "intake" || entered?.kind !== "intake" || !layer || !pipe) return undefined;
  const month = hydraulics.pumps[0]?.month ?? largestMonth(structure.demand);
  const sheet = intakeSheet({ intake: structure, entered, result, layer, pipe, month }, setting);
  return view(sheet, {
    title: `${structure.name}: from demand to cost`,
    month,
    part: "conduit",
    result,
    isClosed: pipe.fouled === undefined,
  });
}

function unitExample(result: StructureResult, setting: Setting): WorkedExample | undefined {
  const { structure, hydraulics } = result;
  const entered = setting.context.run.document.structures.find(({ id }) => id === structure.id);
  const layer = untouchedLayer(result, "penstock") ?? bareSurface;
  const pipe = hydraulics.pipes.find(({ part }) => part === "penstock");
  if (structure.kind !== "hydropower" || entered?.kind !== "hydropower" || !pipe) return undefined;
  const month = largestMonth(plantRunning(structure).flow);
  return view(unitSheet({ plant: structure, entered, layer, pipe, month }, setting), {
    title: `${structure.name}: one unit from head to energy`,
    month,
    part: "penstock",
    result,
    isClosed: pipe.fouled === undefined,
    isBare: layer.thickness === 0,
  });
}

function view(
  { given, groups }: Sheet,
  about: {
    title: string;
    month: number;
    part: string;
    result: StructureResult;
    isClosed: boolean;
    isBare?: boolean;
  },
): WorkedExample {
  const chosen = about.result.components.find(({ name }) => name === about.part)?.chosen.plan.label ?? "";
  return {
    title: about.title,
    intro: `Month of the largest flow, ${monthName(about.month)}; layer of a mature infestation at its thickest if nobody cleans. SI units throughout.`,
    given,
    groups,
    outcome: `${about.isBare ? `Nothing settles in this ${about.part} as it runs. ` : ""}${about.isClosed ? `The layer closes the ${about.part}: nothing passes. ` : ""}The plan chosen for this ${about.part} is “${chosen}”; the cost lines of the study's report (appendix ${appendixLetter("cost-lines")}) follow the layer under that plan month by month, by the same steps.`,
  };
}
