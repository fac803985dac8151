import type { Assumed } from "../../model/assumed.js";
import { waterLevels } from "../../model/entries/checked.js";
import {
  availableHead,
  cleanDelivered,
  cleanLoss,
  cleanVelocity,
  impossible,
} from "../../model/entries/pipe-entries.js";
import type { StudyInput } from "../../model/inputs.js";
import { dailyElevations } from "../../model/lake/levels.js";
import { largestFlow, type PipePart, pipesOf } from "../../model/structures/hydraulic-summary.js";
import type { Structure } from "../../model/structures/inputs.js";
import { barFactors, rackState } from "../../model/structures/rack.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { toDisplay } from "../../units/quantity.js";
import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { valueAt } from "../reading/problems.js";

/** With what a structure is judged. */
interface Judging {
  readonly assumed: Assumed;
  readonly viscosity: number;
  readonly lake: StudyInput["lake"];
  readonly highestWater: number;
  readonly text: (value: number, dimension: DimensionName, digits?: number) => string;
  /** What was typed at a place of the structure. */
  readonly typed: (at: readonly PropertyKey[]) => string;
}

/**
 * Entries of the structures that no clean structure could have: a pipe that would have to carry its flow faster than
 * any does, or that needs more head than there is. Others that are only unusual are told and computed.
 */
export function impossibleProblems(
  document: StudyDocument,
  { structures, lake }: StudyInput,
  assumed: Assumed,
): Contradiction[] {
  const years = lake.record ?? [{ daily: dailyElevations(lake.drawdown) }];
  const judging = {
    assumed,
    viscosity: assumed("hydraulics.viscosity"),
    lake,
    highestWater: waterLevels(years).highest,
    text: textIn(document.study.units),
  };
  return structures.flatMap((structure, index) => {
    const typed = (at: readonly PropertyKey[]) => typedText(document, ["structures", index, ...at]);
    return [
      ...pipesOf(structure)
        .filter(({ flow }) => flow > 0)
        .flatMap((part) => pipeProblems(structure, part, { ...judging, typed })),
      ...rackProblems(structure, { ...judging, typed }),
      ...dryProblems(structure, { ...judging, typed }),
    ].map((problem) => ({ ...problem, path: ["structures", index, ...problem.path] }));
  });
}

/** A value in the units of a study. */
const textIn =
  (system: "us" | "si"): Judging["text"] =>
  (value, dimension, digits = 3) => {
    const number = toDisplay(value, dimension, system).toLocaleString("en-US", {
      maximumSignificantDigits: digits,
    });
    return `${number} ${dimensions[dimension][system].label}`;
  };

function typedText(document: StudyDocument, at: readonly PropertyKey[]): string {
  const text = valueAt(document, [...at, "text"]);
  return typeof text === "string" ? text : "";
}

/** One fault of a pipe, the plainest first: a velocity that cannot be makes a head that cannot be. */
function pipeProblems(structure: Structure, part: PipePart, judging: Judging): Contradiction[] {
  const tooFast = velocityProblems(part, judging);
  return tooFast.length > 0 ? tooFast : headProblems(structure, part, judging);
}

function velocityProblems(part: PipePart, { assumed, text, typed }: Judging): Contradiction[] {
  const velocity = cleanVelocity(part);
  const { velocity: fastest } = impossible(assumed);
  if (velocity <= fastest) return [];
  const path = [...part.at, "diameter"];
  return [
    {
      path,
      found: `${typed(path)}, in which the largest flow of ${text(part.flow, "flow")} runs at ${text(velocity, "speed")}`,
      allowed: `a bore in which it runs no faster than ${text(fastest, "speed")}`,
      remedy: "Correct the diameter, the flow or the unit of either.",
    },
  ];
}

/** The most head that there can be for a pipe, where it comes from, and the share of the flow that it must drive. */
function mostHead(structure: Structure, part: PipePart, { assumed, lake, text, typed }: Judging) {
  const { pumpedHead, delivered } = impossible(assumed);
  const given = availableHead(structure, part);
  if (given) return { head: given.head, from: `the available head, ${typed(given.at)}`, share: delivered };
  if (structure.kind === "hydropower") {
    const head = lake.maximumElevation - structure.tailwaterElevation;
    return {
      head,
      from: `the head from the highest lake to the tailwater, ${text(head, "length")}`,
      share: 1,
    };
  }
  if (structure.kind !== "intake") return undefined;
  const { supply } = structure;
  if (supply.by === "gravity") {
    const head = lake.maximumElevation - (supply.outletElevation ?? lake.maximumElevation);
    const from = `the head from the highest lake to the outlet, ${text(head, "length")}`;
    return { head, from, share: delivered };
  }
  const from = `${text(pumpedHead, "length")}, more than pumps of a water supply give`;
  return { head: pumpedHead, from, share: 1 };
}

/** A pipe whose loss exceeds the head; one that falls short by somewhat is only told as unusual. */
function headProblems(structure: Structure, part: PipePart, judging: Judging): Contradiction[] {
  const most = mostHead(structure, part, judging);
  const { text, typed, viscosity } = judging;
  if (!most || cleanDelivered(part, most.head, viscosity) >= most.share) return [];
  const path = [...part.at, "diameter"];
  const lost = text(cleanLoss(part, viscosity), "length");
  return [
    {
      path,
      found: `${typed(path)}, in which the largest flow of ${text(part.flow, "flow")} takes ${lost} of head with the pipe clean`,
      allowed: `at most ${most.from}`,
      remedy: "Correct the diameter, the length, the flow, the head or the unit of any of them.",
    },
  ];
}

/** The clean rack must keep its own limit of head loss at the largest flow. */
function rackProblems(structure: Structure, judging: Judging): Contradiction[] {
  if (structure.kind !== "intake" && structure.kind !== "hydropower") return [];
  const { rack } = structure;
  const { text, typed } = judging;
  const { headLoss } = rackState(rack, 0, largestFlow(structure), barFactors(rack, judging));
  if (headLoss <= rack.headLossLimit) return [];
  return [
    {
      path: ["rack", "headLossLimit"],
      found: `${typed(["rack", "headLossLimit"])}, less than the clean rack takes at the largest flow, ${text(headLoss, "length")}`,
      allowed: "at least what the clean rack takes",
      remedy: "Correct the rack, the flow, the limit or the unit of any of them.",
    },
  ];
}

/** Nothing takes in water that it never reaches. */
function dryProblems(structure: Structure, { highestWater, text, typed }: Judging): Contradiction[] {
  if (structure.kind !== "intake" && structure.kind !== "hydropower" && structure.kind !== "service-line") {
    return [];
  }
  if (structure.elevation <= highestWater) return [];
  return [
    {
      path: ["elevation"],
      found: `${typed(["elevation"])}, above the water all year`,
      allowed: `an elevation up to the highest level of the year, ${text(highestWater, "elevation", 6)}`,
      remedy: "Correct the elevation, the lake's levels or the unit of either.",
    },
  ];
}
