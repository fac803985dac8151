import { at } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { waterwayFlow } from "../../model/hydraulics/waterway.js";
import type { Money } from "../../model/money/decimal.js";
import type { Layer } from "../../model/mussels/layer.js";
import { presentValueOf } from "../../model/present-value.js";
import type { LakeContext } from "../../model/structures/context.js";
import { kindOf, pipesOf } from "../../model/structures/kinds.js";
import type { PipePart } from "../../model/structures/pipe-part.js";
import { cleanLine, type SmallLine, serviceShare } from "../../model/structures/small-line.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Reach, SizeWord } from "../../model/structures/structure-kind.js";
import { type MatureYears, matureMean } from "../levels/mature-years.js";
import { type NamedLine, namedLines } from "./named-lines.js";
import { type UnitCost, unitCosts } from "./unit-costs.js";

/** What is told of a structure beside its result. */
export interface TracedStructure {
  readonly result: StructureResult;
  /** In the register: "power plant". */
  readonly kindName: string;
  /** Not a duty of the whole lake. */
  readonly isBuilt: boolean;
  /** Absent where it stands nowhere. */
  readonly reach: Reach | undefined;
  /** What it is measured by. */
  readonly size: readonly SizeWord[];
  /** What whoever works on one of its kind has to know. */
  readonly cautions: string | undefined;
  readonly pipes: readonly PipePart[];
  readonly serviceLines: readonly ServiceLine[];
  readonly cost: StructureCost;
  /** By what it delivers or treats. */
  readonly unitCosts: readonly UnitCost[];
  /** Its cost lines over the horizon, those of one name together. */
  readonly lines: readonly NamedLine[];
}

/** What an infestation costs one structure under the lake's own levels. */
export interface StructureCost {
  readonly first: Money;
  readonly matureMean: number;
  /** In the last year of the horizon. */
  readonly last: number;
  /** Expected present value without a program. */
  readonly expected: Money;
}

/** A line of small bore: what the head drives through it, and what it still does if left to foul. */
export interface ServiceLine {
  readonly name: string;
  readonly count: number;
  readonly line: SmallLine;
  readonly cleanFlow: number;
  readonly fouledFlow: number;
  /** Water, or heat where it serves an exchanger, over the same when clean. */
  readonly share: number;
}

export function tracedStructure(
  result: StructureResult,
  comparison: Comparison,
  mature: MatureYears,
): TracedStructure {
  const { structure } = result;
  const kind = kindOf(structure);
  const pipes = pipesOf(structure);
  return {
    result,
    kindName: kind.name,
    isBuilt: kind.isBuilt,
    reach: kind.reach(structure),
    size: kind.size(structure),
    cautions: kind.cautions,
    pipes,
    serviceLines: serviceLines(result, pipes, comparison.schedules[0].contexts[0]),
    cost: costOf(structure.id, comparison, mature),
    unitCosts: unitCosts(result, comparison, mature),
    lines: namedLines(result, comparison.baseline.weights, mature),
  };
}

function costOf(
  id: string,
  { infestation, baseline }: Pick<Comparison, "infestation" | "baseline">,
  mature: MatureYears,
): StructureCost {
  const cost = infestation.ofStructure(id);
  const { byYear } = cost;
  return {
    first: at(byYear, 0),
    matureMean: matureMean(byYear, mature),
    last: byYear.at(-1)?.toNumber() ?? 0,
    expected: presentValueOf(cost, baseline.weights),
  };
}

const serviceLines = (
  { components }: StructureResult,
  pipes: readonly PipePart[],
  lake: LakeContext,
): ServiceLine[] =>
  pipes.flatMap(({ name, line: alike }) => {
    const layer = components.find((each) => each.name === name)?.untouchedLayer;
    if (!alike || !layer) return [];
    const { line, count } = alike;
    return [{ name, count, line, ...flowsOf(line, layer, lake), share: serviceShare(line, lake)(layer) }];
  });

function flowsOf(
  line: SmallLine,
  layer: Layer,
  lake: LakeContext,
): Pick<ServiceLine, "cleanFlow" | "fouledFlow"> {
  const clean = cleanLine(line, lake);
  const { roughness, viscosity } = lake;
  return {
    cleanFlow: waterwayFlow(clean, line.availableHead, viscosity),
    fouledFlow: waterwayFlow(fouledPipe(clean, layer, roughness), line.availableHead, viscosity),
  };
}
