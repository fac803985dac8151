import { join } from "node:path";
import type { AssumptionSet } from "../../assumptions/entry.js";
import type { StructureResult } from "../../model/structures/structure.js";
import { examplesFolder } from "../../report/document/assets.js";
import type { ReportContext } from "../../report/document/context.js";
import { runStudy, type StudyRun } from "../../study/prepare/compute.js";
import { readStudyFile } from "../../study/reading/read.js";
import { type Setting, settingOf } from "../worked/setting.js";
import { dockPath } from "./docks.js";
import { dutyPath } from "./duties.js";
import { hatcheryPath } from "./hatchery.js";
import { serviceLinePath } from "./lines.js";
import type { Path } from "./path.js";
import { rackPath } from "./racks.js";
import { rampPath } from "./ramps.js";
import { sprinklerPath } from "./sprinklers.js";
import { treatmentPath } from "./treatment.js";
import { waterOf } from "./water.js";

type Kind = StructureResult["structure"]["kind"];

/**
 * How each kind of structure leads to one of its lines; nothing for a structure that does not have that line. A kind may
 * be without a path.
 */
const byKind: Readonly<
  Partial<Record<Kind, (result: StructureResult, setting: Setting) => Path | undefined>>
> = {
  intake: rackPath,
  hydropower: rackPath,
  "service-line": serviceLinePath,
  dock: dockPath,
  ramp: rampPath,
  "lake-wide": dutyPath,
  hatchery: hatcheryPath,
  "pumping-plant": sprinklerPath,
  "treatment-plant": treatmentPath,
};

/** The paths of one lake, after the values that they start from. */
export interface LakePaths {
  readonly lake: string;
  readonly water: Path;
  readonly paths: readonly (Path & { readonly kind: Kind })[];
}

const lakes = ["sorrel-bend", "copperhithe", "ninemoss"] as const;

/** One path for each kind of structure, of the first shipped lake that has its line. */
export function pathsOf(
  assumptions: AssumptionSet,
  contextOf: (run: StudyRun) => ReportContext,
): LakePaths[] {
  const told = new Set<Kind>();
  return lakes.map((name) => {
    const run = runStudy(readStudyFile(join(examplesFolder, `${name}.yaml`)), assumptions);
    const setting = settingOf(contextOf(run), { under: "plan" });
    const paths = setting.context.comparison.structures.flatMap((result) => {
      const { kind } = result.structure;
      const path = told.has(kind) ? undefined : byKind[kind]?.(result, setting);
      if (!path) return [];
      told.add(kind);
      return [{ kind, ...path }];
    });
    return { lake: run.document.lake.name, water: waterOf(name, setting), paths };
  });
}
