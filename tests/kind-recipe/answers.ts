/** Prints where a study with a hatchery line shows it; run in a copy of the project that has the kind. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { columnsOf, structureKindFields } from "../../src/editor/table/structure-columns.js";
import { readStructureTable } from "../../src/editor/table/structure-table.js";
import { templateOf } from "../../src/editor/table/template.js";
import { scheduleCautions } from "../../src/report/board/schedules/schedule-cautions.js";
import { assumptionsFolder, examplesFolder } from "../../src/report/document/assets.js";
import { reportContext } from "../../src/report/document/context.js";
import { levelsPicture } from "../../src/report/rack/levels-picture.js";
import { pipesTable } from "../../src/report/rack/pipes-table.js";
import { registerTable } from "../../src/report/rack/register.js";
import { schematicView } from "../../src/report/rack/schematic.js";
import { fixedPlaces } from "../../src/report/words/places.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { draftedLevels } from "../../src/study/reading/drafted-levels.js";
import { readDraft } from "../../src/study/reading/judged.js";
import { InputError } from "../../src/study/reading/problems.js";
import { readStudyText } from "../../src/study/reading/read.js";

const hatchery = {
  id: "hatchery",
  kind: "hatchery-line",
  name: "Trout hatchery",
  bearer: "power-fund",
  elevation: "2,095 ft",
  length: "900 ft",
  diameter: "12 in",
  roughness: "0.006 in",
  minorLoss: 3,
  requiredFlow: "4 cfs",
  availableHead: "30 ft",
  fishLossPerDay: "$900/d",
};
const sorrelBend = parse(readFileSync(join(examplesFolder, "sorrel-bend.yaml"), "utf8"));
const structures: readonly { readonly kind: string }[] = sorrelBend.structures;
// One structure of each kind is enough: drawings leave out what has no room.
const kept = structures.filter(
  ({ kind }, index) => structures.findIndex((each) => each.kind === kind) === index,
);
const study = { ...sorrelBend, structures: [...kept, hatchery] };
const withHatchery = (changed: Partial<typeof hatchery>) => ({
  ...study,
  structures: [...kept, { ...hatchery, ...changed }],
});

const assumptions = loadAssumptions(assumptionsFolder);
const runOf = (document: object) =>
  runStudy(readStudyText(JSON.stringify(document), "study.json"), assumptions);

/** Places of what a study is refused for. */
function refused(attempt: () => unknown): string[] {
  try {
    attempt();
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ path }) => path);
    throw error;
  }
}

const run = runOf(study);
const context = reportContext(run);
const result = run.comparison.structures.find(({ structure }) => structure.id === hatchery.id);
const cells = (table: ReturnType<typeof registerTable> | undefined) =>
  (table?.rows ?? []).map((row) => row.cells.map(({ text }) => text));
const head = columnsOf(hatchery.kind).map(({ at }) => String(at[0]));
const heads = [
  "name",
  "bearer",
  "elevation",
  "length",
  "diameter",
  "roughness",
  "minor loss",
  "required flow",
];
const csv = `${[...heads, "available head", "fish loss per day"].join(",")}\nTable hatchery,power-fund,2095 ft,900 ft,12 in,0.006 in,3,4 cfs,30 ft,$900/d\n`;

const drawn = draftedLevels({ document: study, levels: undefined });

const answers = {
  parts: result?.components.map(({ name, thickestLayer }) => ({
    name,
    fouls: thickestLayer.thickness > 0,
  })),
  register: cells(registerTable(context)).find(([name]) => name === hatchery.name),
  drawing: schematicView(context)?.marks.map(({ name }) => name.map(({ text }) => text).join(" ")),
  pipes: cells(pipesTable(context)).map(([first]) => first),
  places: fixedPlaces(context).flatMap(({ names }) => names),
  picture: drawn && levelsPicture(drawn, "us").structures.map(({ name }) => name),
  cautions: scheduleCautions(context).filter((caution) => caution.startsWith("Exposed")),
  form: structureKindFields()
    .get(hatchery.kind)
    ?.fields.map(({ label }) => label),
  columns: head,
  template: templateOf(hatchery.kind, { system: "us", currency: "USD" }, study),
  table: readStructureTable(csv, hatchery.kind, study).lines,
  aboveLake: readDraft(withHatchery({ elevation: "2,150 ft" })).problems.map(({ path }) => path),
  tooFast: refused(() => runOf(withHatchery({ diameter: "1 in" }))),
  unknownKind: readDraft(withHatchery({ kind: "pond" })).problems.map(({ allowed }) => allowed),
};
console.log(JSON.stringify(answers));
