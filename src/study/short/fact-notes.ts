import { usualRanges } from "../../model/entries/usual-ranges.js";
import type { SpreadQuantity } from "../../units/spread.js";
import { rangeOf, type Writing } from "./amount-text.js";
import { busiestLane } from "./busiest-lane.js";
import type { ShortFacts } from "./facts-schema.js";
import { filling, type TypicalValues } from "./filling.js";
import type { Question, QuestionGroup } from "./question.js";
import { questionGroups } from "./questions.js";
import { typicalHint } from "./typical-hint.js";

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
  ...fallNotes(facts, values),
  ...warmthNotes(facts, values),
  ...questionGroups.flatMap((group) => farNotes(group, facts, values)),
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

const again = "Look again at the number and its unit, or leave it so.";

const farFactor = (values: TypicalValues): number =>
  values.get("typical.far-factor")?.value ?? Number.POSITIVE_INFINITY;

/** One level typed in another unit than the other. */
function fallNotes({ summerLevel, winterLevel }: ShortFacts, values: TypicalValues): FactNote[] {
  const most = (values.get("typical.drawdown")?.high ?? Number.POSITIVE_INFINITY) * farFactor(values);
  if (!summerLevel || !winterLevel || rangeOf(summerLevel).high - rangeOf(winterLevel).low <= most) return [];
  const text = `${winterLevel.text} is very far below the level in summer, ${summerLevel.text}. ${again}`;
  return [{ at: ["winterLevel"], text }];
}

function warmthNotes({ warmestMonth }: ShortFacts, values: TypicalValues): FactNote[] {
  const usual = values.get("typical.warmest-water");
  if (!warmestMonth || !usual || (warmestMonth.value >= usual.low && warmestMonth.value <= usual.high))
    return [];
  const text = `${warmestMonth.text} is unusual for the surface of a lake in its warmest month. ${again}`;
  return [{ at: ["warmestMonth"], text }];
}

/** Amounts many times above or below what is typical: as a rule another unit was meant. */
function farNotes(group: QuestionGroup, facts: ShortFacts, values: TypicalValues): FactNote[] {
  const held: unknown = group.key === "" ? facts : Reflect.get(facts, group.key);
  const things: readonly unknown[] = Array.isArray(held) ? held : [held];
  const writing = { system: facts.units, currency: facts.currency };
  return things.flatMap((thing, index) =>
    group.questions.flatMap((question) => {
      const found = farText(question, Reflect.get(Object(thing), question.key), values, writing);
      const at = [group.key, ...(group.repeats ? [String(index)] : []), question.key].filter(Boolean);
      return found === undefined ? [] : [{ at, text: found }];
    }),
  );
}

function farText(question: Question, given: unknown, values: TypicalValues, writing: Writing) {
  const { typical, dimension } = question;
  const amount = amountOf(given);
  if (!typical || !amount || dimension === "elevation") return undefined;
  const { low, high } = filling(values, writing, 1).typical(typical);
  const factor = farFactor(values);
  if (!(amount.value > 0) || (amount.value >= low / factor && amount.value <= high * factor))
    return undefined;
  return `${amount.text} is far from the usual: ${typicalHint(question, values, writing)}. ${again}`;
}

function amountOf(given: unknown): Pick<SpreadQuantity, "value" | "text"> | undefined {
  if (typeof given === "number") return { value: given, text: given.toLocaleString("en-US") };
  const { value, text } = Object(given) as Partial<SpreadQuantity>;
  return value === undefined || text === undefined ? undefined : { value, text };
}
