import { pipeArea } from "../../model/hydraulics/friction.js";
import { textIn } from "../checks/in-study-units.js";
import { monthNames } from "../format/month-names.js";
import type { Contradiction } from "../reading/contradiction.js";
import { rangeOf } from "./amount-text.js";
import { busiestLane } from "./busiest-lane.js";
import { exchangeRateOf } from "./currency.js";
import type { IntakeFacts, ProgramFacts, ShortFacts } from "./facts-schema.js";
import type { TypicalValues } from "./filling.js";
import { monthTitle } from "./questions.js";

/** What cannot be true of facts together. */
export const factProblems = (facts: ShortFacts, values: TypicalValues): Contradiction[] => [
  ...currencyProblems(facts, values),
  ...depthProblems(facts),
  ...headProblems(facts),
  ...launchProblems(facts, values),
  ...facts.intakes.flatMap((intake, index) => intakeProblems(intake, index, facts, values)),
  ...(["wanted", "inForce"] as const).flatMap((key) => seasonProblems(facts[key], key)),
];

function currencyProblems(facts: ShortFacts, values: TypicalValues): Contradiction[] {
  if (exchangeRateOf(facts, values) !== undefined) return [];
  return [
    {
      path: ["exchangeRate"],
      found: `nothing, with amounts in ${facts.currency}`,
      allowed: `how many ${facts.currency} a US dollar costs: typical prices are in US dollars`,
      remedy: "Add the rate of the year, such as 1.4.",
    },
  ];
}

/** Metres by which the lake falls from summer to winter at the most, if both levels are known. */
const knownDrawdown = ({ summerLevel, winterLevel }: ShortFacts): number =>
  summerLevel && winterLevel ? Math.max(0, rangeOf(summerLevel).high - rangeOf(winterLevel).low) : 0;

const depthWords = (facts: ShortFacts, value: number): string => textIn(facts.units)(value, "length");

function depthProblems(facts: ShortFacts): Contradiction[] {
  const { depth } = facts;
  const fall = knownDrawdown(facts);
  if (!depth || depth.value > fall) return [];
  return [
    {
      path: ["depth"],
      found: depth.text,
      allowed: `more than the lake falls in winter, ${depthWords(facts, fall)}`,
      remedy: "Correct the depth, or a level or its unit.",
    },
  ];
}

function headProblems(facts: ShortFacts): Contradiction[] {
  const head = facts.plant?.head;
  const fall = knownDrawdown(facts);
  if (!head || head.value > fall + leastHead) return [];
  return [
    {
      path: ["plant", "head"],
      found: head.text,
      allowed: `a head that is left when the lake is down: more than ${depthWords(facts, fall + leastHead)}`,
      remedy: "Correct the head, or a level or its unit.",
    },
  ];
}

function launchProblems(facts: ShortFacts, values: TypicalValues): Contradiction[] {
  const most = values.get("checks.impossible-lane-launches")?.value;
  const found = busiestLane(facts, values);
  if (!facts.launches || !found || most === undefined || found.each <= most) return [];
  return [
    {
      path: ["launches"],
      found: `${facts.launches.text}, or ${found.told}`,
      allowed: `at most ${most.toLocaleString("en-US")} a day at a lane: one a minute, by day and night`,
      remedy: "Correct the launches of a year or the number of ramps.",
    },
  ];
}

/** Metres between the lowest lake and the tailwater, at the least. */
export const leastHead = 2;

function intakeProblems(
  intake: IntakeFacts,
  index: number,
  facts: ShortFacts,
  values: TypicalValues,
): Contradiction[] {
  const at = (...keys: string[]) => ["intakes", index, ...keys];
  const found: Contradiction[] = [];
  const { depth, flow, pipe, use } = intake;
  const fall = knownDrawdown(facts);
  if (depth && facts.depth && depth.value >= facts.depth.value) {
    const allowed = `less than the lake's greatest depth, ${facts.depth.text}`;
    found.push({ path: at("depth"), found: depth.text, allowed });
  } else if (depth && use !== "irrigation" && depth.value <= fall) {
    const allowed = `more than the lake falls in winter, ${depthWords(facts, fall)}: it would draw air`;
    const remedy = "Correct the depth or a level, or say that it is for irrigation and rests in winter.";
    found.push({ path: at("depth"), found: depth.text, allowed, remedy });
  }
  const fastest = values.get("checks.impossible-velocity")?.value;
  const text = textIn(facts.units);
  const speed = flow && pipe ? flow.value / pipeArea(pipe.value) : 0;
  if (pipe && flow && fastest !== undefined && speed > fastest) {
    found.push({
      path: at("pipe"),
      found: `${pipe.text}, in which ${flow.text} run at ${text(speed, "speed")}`,
      allowed: `a bore in which water runs no faster than ${text(fastest, "speed")}`,
      remedy: "Correct the pipe, the flow or the unit of either.",
    });
  }
  return found;
}

function seasonProblems(program: ProgramFacts | undefined, key: string): Contradiction[] {
  const { from, until } = program ?? {};
  if (!from || !until || monthNames.indexOf(from) <= monthNames.indexOf(until)) return [];
  return [
    {
      path: [key, "until"],
      found: monthTitle(until),
      allowed: `${monthTitle(from)} or a later month of the year`,
      remedy: "A season that runs over the new year is entered in the full form.",
    },
  ];
}
