import { at } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import { waterLevels } from "../../model/entries/checked.js";
import { laneLaunches, mostLaneLaunches } from "../../model/entries/launch-entries.js";
import { cleanDelivered, cleanLoss, cleanVelocity, impossible } from "../../model/entries/pipe-entries.js";
import type { StudyInput } from "../../model/inputs.js";
import { dailyElevations } from "../../model/lake/levels.js";
import { kindOf, pipesOf, type Structure } from "../../model/structures/kinds.js";
import type { PipePart } from "../../model/structures/pipe-part.js";
import { barFactors, rackHeadLoss } from "../../model/structures/rack.js";
import type { DimensionName } from "../../units/dimensions.js";
import { monthNames } from "../format/month-names.js";
import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { typedText } from "../reading/problems.js";
import { textIn } from "./in-study-units.js";

/** Context for judging a structure. */
interface Judging {
  readonly assumed: Assumed;
  readonly viscosity: number;
  readonly lake: StudyInput["lake"];
  readonly highestWater: number;
  readonly text: (value: number, dimension: DimensionName, digits?: number) => string;
  /** The text typed at a place in the structure. */
  readonly typed: (at: readonly PropertyKey[]) => string;
}

/**
 * Entries that no clean structure could have: a pipe with an impossible velocity, or one that needs more head than is
 * available, or more launches than a day has room for. Entries that are merely unusual are reported and computed.
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
      ...pipesOf(structure).flatMap((part) => pipeProblems(part, { ...judging, typed })),
      ...rackProblems(structure, { ...judging, typed }),
      ...dryProblems(structure, { ...judging, typed }),
      ...launchProblems(structure, { ...judging, typed }),
    ].map((problem) => ({ ...problem, path: ["structures", index, ...problem.path] }));
  });
}

/** One fault per pipe, velocity first: an impossible velocity implies an impossible head. */
function pipeProblems(part: PipePart, judging: Judging): Contradiction[] {
  const tooFast = velocityProblems(part, judging);
  return tooFast.length > 0 ? tooFast : headProblems(part, judging);
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

/** Most head available to a pipe, its origin, and the share of the flow that it must drive. */
function mostHead({ drive }: PipePart, { assumed, lake, text, typed }: Judging) {
  const { pumpedHead, delivered } = impossible(assumed);
  if (drive.by === "head") {
    return { head: drive.head, from: () => `the available head, ${typed(drive.at)}`, share: delivered };
  }
  if (drive.by === "pump") {
    const from = () => `${text(pumpedHead, "length")}, more than pumps of a water supply give`;
    return { head: pumpedHead, from, share: 1 };
  }
  const head = Math.max(0, lake.maximumElevation - drive.lowerLevel);
  const from = () => `the head from the highest lake to the ${drive.lowerName}, ${text(head, "length")}`;
  return { head, from, share: drive.mayFallShort ? delivered : 1 };
}

/** A pipe whose loss exceeds its head; a slight shortfall is only unusual. */
function headProblems(part: PipePart, judging: Judging): Contradiction[] {
  const most = mostHead(part, judging);
  const { text, typed, viscosity } = judging;
  const loss = cleanLoss(part, viscosity);
  if (loss <= most.head || cleanDelivered(part, most.head, viscosity) >= most.share) return [];
  const path = [...part.at, "diameter"];
  const lost = text(loss, "length");
  return [
    {
      path,
      found: `${typed(path)}, in which the largest flow of ${text(part.flow, "flow")} takes ${lost} of head with the pipe clean`,
      allowed: `at most ${most.from()}`,
      remedy: "Correct the diameter, the length, the flow, the head, or the unit of one of them.",
    },
  ];
}

/** A clean rack must stay within its head-loss limit at the largest flow. */
function rackProblems(structure: Structure, judging: Judging): Contradiction[] {
  const found = kindOf(structure).rack?.(structure);
  if (!found) return [];
  const { rack, flow } = found;
  const { text, typed } = judging;
  const headLoss = rackHeadLoss(rack, 0, flow, barFactors(rack, judging));
  if (headLoss <= rack.headLossLimit) return [];
  return [
    {
      path: ["rack", "headLossLimit"],
      found: `${typed(["rack", "headLossLimit"])}, less than the clean rack takes at the largest flow, ${text(headLoss, "length")}`,
      allowed: "at least what the clean rack takes",
      remedy: "Correct the rack, the flow, the limit, or the unit of one of them.",
    },
  ];
}

/** An inlet must lie below water at some time of the year. */
function dryProblems(structure: Structure, { highestWater, text, typed }: Judging): Contradiction[] {
  const inlet = kindOf(structure).inlet?.(structure);
  if (!inlet || inlet.elevation <= highestWater) return [];
  return [
    {
      path: ["elevation"],
      found: `${typed(["elevation"])}, above the water all year`,
      allowed: `an elevation up to the highest level of the year, ${text(highestWater, "elevation", 6)}`,
      remedy: "Correct the elevation, the lake's levels or the unit of either.",
    },
  ];
}

/** No more boats are launched in a day than its minutes leave room for, side by side. */
function launchProblems(structure: Structure, { assumed, typed }: Judging): Contradiction[] {
  const launches = kindOf(structure).launches?.(structure);
  if (!launches) return [];
  const most = mostLaneLaunches(assumed);
  const month = launches.perDay.indexOf(Math.max(...launches.perDay));
  const found = laneLaunches(at(launches.perDay, month), launches.width, assumed);
  if (found <= most) return [];
  const path = ["launchesPerDay", at(monthNames, month)];
  return [
    {
      path,
      found: `${typed(path)} launches a day, or ${countText(found)} at each lane`,
      allowed: `at most ${countText(most)} a day at a lane: one a minute, by day and night`,
      remedy: "Enter the launches of one day, or correct the width or its unit.",
    },
  ];
}

const countText = (count: number): string => Math.round(count).toLocaleString("en-US");
