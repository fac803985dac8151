import type { Assumed } from "../assumed.js";
import type { StudyInput } from "../inputs.js";
import { daysOf, months } from "../lake/calendar.js";
import { at, sumOf } from "../lists.js";
import type { Contexts } from "../structures/context.js";
import type { Structure } from "../structures/inputs.js";
import { type Checked, waterLevels } from "./checked.js";
import { type EntryCheck, usuallyAtMost } from "./entry-check.js";
import { pipeEntries } from "./pipe-entries.js";
import { plantEntries } from "./plant-entries.js";
import { rackEntries } from "./rack-entries.js";
import { dockEntries, rampEntries } from "./shore-entries.js";
import { supplyEntries } from "./supply-entries.js";
import { usualRanges } from "./usual-ranges.js";
import { inletEntries } from "./water-entries.js";

/**
 * What was entered for the structures held against what is usual for their kind, all clean: a slip of the unit or of
 * the decimal point shows there. It warns and changes no figure; what cannot be is refused where a study is read.
 */
export function entryChecks(input: StudyInput, contexts: Contexts, assumed: Assumed): EntryCheck[] {
  const water = waterLevels(contexts);
  const ofEach = input.structures.flatMap((structure, index) =>
    structureEntries({ structure, at: ["structures", index], contexts, water, assumed }),
  );
  return [...ofEach, ...launchCheck(input, assumed)];
}

function structureEntries(checked: Checked<Structure>): EntryCheck[] {
  const { structure } = checked;
  switch (structure.kind) {
    case "intake":
      return [...waterway(checked, structure), ...supplyEntries({ ...checked, structure })];
    case "hydropower":
      return [...waterway(checked, structure), ...plantEntries({ ...checked, structure })];
    case "service-line":
      return [...pipeEntries(checked), ...inletEntries({ ...checked, structure })];
    case "dock":
      return dockEntries({ ...checked, structure });
    case "ramp":
      return rampEntries({ ...checked, structure });
    case "lake-wide":
      return [];
  }
}

const waterway = (
  checked: Checked<Structure>,
  structure: Extract<Structure, { kind: "intake" | "hydropower" }>,
): EntryCheck[] => [
  ...pipeEntries(checked),
  ...rackEntries({ ...checked, structure }),
  ...inletEntries({ ...checked, structure }),
];

/** Launches at the ramps against those of the lake: a launch is counted once. */
function launchCheck({ structures, boats }: StudyInput, assumed: Assumed): EntryCheck[] {
  const all = sumOf(boats.launches);
  const ramps = structures.flatMap((each) => (each.kind === "ramp" ? [each] : []));
  if (ramps.length === 0 || all === 0) return [];
  const atRamps = months.reduce(
    (sum, month) =>
      sum + ramps.reduce((day, { launchesPerDay }) => day + at(launchesPerDay, month), 0) * daysOf(month),
    0,
  );
  const entry = {
    at: ["boats", "launches"],
    what: "Launches a year at the ramps over the launches entered for the lake",
    measure: "count",
    found: atRamps / all,
    remedy: "Look again at the launches a day of the ramps and at the launches by month of the boats.",
  } as const;
  return [usuallyAtMost(entry, usualRanges.launchRatio, assumed)];
}
