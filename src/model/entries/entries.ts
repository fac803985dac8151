import type { Assumed } from "../assumed.js";
import type { StudyInput } from "../inputs.js";
import type { Contexts } from "../structures/context.js";
import { kindOf, pipesOf, type Structure } from "../structures/kinds.js";
import { type Checked, waterLevels } from "./checked.js";
import { type EntryCheck, usual } from "./entry-check.js";
import { launchEntries } from "./launch-entries.js";
import { pipeEntries } from "./pipe-entries.js";
import { rackEntries } from "./rack-entries.js";
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
  return [...ofEach, ...launchEntries(input, assumed), ...rateCheck(input, assumed)];
}

function structureEntries(checked: Checked<Structure>): EntryCheck[] {
  const { structure } = checked;
  const kind = kindOf(structure);
  const rack = kind.rack?.(structure);
  const inlet = kind.inlet?.(structure);
  return [
    ...pipeEntries(checked, pipesOf(structure)),
    ...(rack ? rackEntries(checked, rack) : []),
    ...(inlet ? inletEntries(checked, inlet) : []),
    ...(kind.entries?.(checked) ?? []),
  ];
}

/** A rate a hundred times too low is a share that was given a percent sign; none at all is a choice. */
function rateCheck({ money }: StudyInput, assumed: Assumed): EntryCheck[] {
  if (money.discountRate === 0) return [];
  const entry = {
    at: ["money", "discountRate"],
    what: "Discount rate of a year, above inflation",
    measure: "share",
    found: money.discountRate,
    remedy: "Look again at the rate: three percent a year are written 3 %/yr.",
  } as const;
  return [usual(entry, usualRanges.discountRate, assumed)];
}
