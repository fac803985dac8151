import type { StructureBase } from "./inputs.js";
import { dock } from "./kinds/dock.js";
import { hatchery } from "./kinds/hatchery.js";
import { hydropower } from "./kinds/hydropower.js";
import { intake } from "./kinds/intake.js";
import { lakeWide } from "./kinds/lake-wide.js";
import { pumpingPlant } from "./kinds/pumping-plant.js";
import { ramp } from "./kinds/ramp.js";
import { serviceLine } from "./kinds/service-line.js";
import { treatmentPlant } from "./kinds/treatment-plant.js";
import type { PipePart } from "./pipe-part.js";
import type { StructureKind } from "./structure-kind.js";

/** Every kind of structure, in the order in which they are offered. */
const listed = [
  intake,
  pumpingPlant,
  treatmentPlant,
  hydropower,
  serviceLine,
  hatchery,
  dock,
  ramp,
  lakeWide,
] as const;

type InputOf<Kind> = Kind extends StructureKind<infer Input> ? Input : never;

/** A structure of any kind, as the model takes it. */
export type Structure = InputOf<(typeof listed)[number]>;

type KindName = Structure["kind"];

/** What the kinds have in common, for lists of them. */
export const structureKinds: readonly Pick<
  StructureKind<StructureBase & { readonly kind: KindName }>,
  "kind" | "title" | "commonFields" | "lowestField"
>[] = listed;

const byName: ReadonlyMap<string, unknown> = new Map(listed.map((each) => [each.kind, each]));

/** The object of a structure's kind. */
export function kindOf<Input extends Structure>(structure: Input): StructureKind<Input>;
export function kindOf({ kind }: Structure): unknown {
  return byName.get(kind);
}

/** The pipes of a structure through which anything flows. */
export const pipesOf = (structure: Structure): readonly PipePart[] =>
  (kindOf(structure).pipes?.(structure) ?? []).filter(({ flow }) => flow > 0);
