import { usualRanges } from "../../model/entries/usual-ranges.js";
import { busiestLane } from "./busiest-lane.js";
import type { ShortFacts } from "./facts-schema.js";
import type { TypicalValues } from "./filling.js";

/** What is unusual of a fact, though it may be meant. */
export interface FactNote {
  readonly at: readonly string[];
  readonly text: string;
}

/** What may be a slip in facts that can be together. It changes nothing. */
export const factNotes = (facts: ShortFacts, values: TypicalValues): FactNote[] => [
  ...levelNotes(facts),
  ...emptyNotes(facts),
  ...launchNotes(facts, values),
];

function levelNotes({ summerLevel, winterLevel }: ShortFacts): FactNote[] {
  if (!summerLevel || !winterLevel || winterLevel.value <= summerLevel.value) return [];
  const text = `Above the level in summer, ${summerLevel.text}, which is unusual. Correct a level or its unit, or leave it so if the lake is held higher in winter.`;
  return [{ at: ["winterLevel"], text }];
}

function emptyNotes({ intakes, plant, docks, ramps }: ShortFacts): FactNote[] {
  if (intakes.length > 0 || plant || docks?.slips !== 0 || docks.area || ramps !== 0) return [];
  const text =
    "Without an intake, a plant, docks or ramps there is nothing for mussels to foul: what they cost is what the whole lake pays, for monitoring and for checks of leaving boats. Leave a count empty if you do not know it.";
  return [{ at: ["ramps"], text }];
}

function launchNotes(facts: ShortFacts, values: TypicalValues): FactNote[] {
  const most = values.get(usualRanges.laneLaunches.high)?.value;
  const found = busiestLane(facts, values);
  if (most === undefined || found === undefined || found.each <= most) return [];
  const text = `${found.told}, which is unusual: at most ${most} as a rule. Look again at the launches and at the ramps, or leave them so.`;
  return [{ at: ["launches"], text }];
}
