import type { AssumptionSet } from "../../assumptions/entry.js";
import { sumOf } from "../../lists.js";
import type { ChanceOrigins } from "../../model/risk/chance-origins.js";
import type { FuturesOdds, Odds, OddsAgainst, TornadoBar } from "../odds/odds.js";

/** From most to least. */
export type Level = "high" | "medium" | "low";

/** What is held against each other: how a finding comes out by each. */
type Comparing = "central case" | "two accounts" | "two routes to the chance" | "two species";

/** How firm a finding is. */
export interface Confidence {
  readonly level: Level;
  /** How much of what decides it is published, counted or entered. */
  readonly evidence: Level;
  readonly agreement: Level;
  /** Share of what decides it that is judged or from memory: by the squares of the widths of its bars. */
  readonly judgedShare: number;
  /** Inputs of which each alone reverses the answer within its range. */
  readonly reversing: readonly string[];
  /** Whether nothing within reason changes the answer. */
  readonly isFirm: boolean;
  readonly disagreeing: readonly Comparing[];
}

/** Of the two findings of the first page. */
export interface Confidences {
  readonly pays: Confidence;
  readonly chance: Confidence;
}

/** What a finding is judged by beside its odds. */
export interface JudgedBy {
  readonly assumptions: AssumptionSet;
  /** Ids of assumptions for which the study has values of its own. */
  readonly own: ReadonlySet<string>;
  readonly chance: ChanceOrigins | undefined;
  /** The requested option's net benefit at central values, and with the other species of mussels. */
  readonly central: number;
  readonly otherSpecies: number;
}

/** Shares of what decides that may be judged, with the evidence still high, or medium. */
export const judgedLimits = { high: 1 / 3, medium: 2 / 3 } as const;

/** The two routes to the chance differ where one is more than so many times the other. */
export const farApart = 4;

/** Chances to pay between which an answer is open: beyond, nine of ten outcomes agree with it. */
export const openChances = { low: 0.1, high: 0.9 } as const;

/**
 * Confidence in whether the requested option pays, and in the chance of infestation. Evidence follows the share of what
 * decides that is judged or from memory, agreement how many of the comparisons come out otherwise: none, one, more. The
 * level is the lower of both, at most medium where one input alone reverses the answer, low where that input is judged,
 * and high where nothing within reason changes the answer.
 */
export function confidences(odds: FuturesOdds & Pick<Odds, "matters">, by: JudgedBy): Confidences {
  const bars = distinctBars(odds.matters.tornado);
  return { pays: confidenceToPay(odds, bars, by), chance: confidenceInChance(bars, by) };
}

function confidenceToPay(
  odds: FuturesOdds & Pick<Odds, "matters">,
  bars: readonly TornadoBar[],
  by: JudgedBy,
): Confidence {
  const against = odds.options.find(({ id }) => id === odds.requested)?.against;
  if (!against) throw new Error(`odds do not weigh ${odds.requested} against doing nothing`);
  const sign = Math.sign(against.netBenefit.value);
  const disagrees = (netBenefit: number) => Math.sign(netBenefit) !== sign;
  const disagreeing = comparisonsWhere(
    ["central case", disagrees(by.central)],
    ["two accounts", against.withOther !== undefined && disagrees(against.withOther.netBenefit.value)],
    ["two routes to the chance", routesDiffer(by.chance)],
    ["two species", disagrees(by.otherSpecies)],
  );
  const reversing = bars.filter((bar) => reverses(bar, odds.matters.netBenefit));
  const isFirm = reversing.length === 0 && disagreeing.length === 0 && isBeyondDoubt(against);
  const judged = judgedShareOf(bars, by);
  return {
    ...levelsOf(
      judged,
      disagreeing,
      reversing.length > 0,
      reversing.some((bar) => isJudgedBar(bar, by)),
      isFirm,
    ),
    reversing: reversing.map(({ name }) => name),
    judgedShare: judged,
    isFirm,
    disagreeing,
  };
}

/** By the bars of what decides the chance, and by its two routes; no answer is reversed. */
function confidenceInChance(bars: readonly TornadoBar[], by: JudgedBy): Confidence {
  const deciding = bars.filter(({ id, members }) => /^(arrival\.|boats\/|founding)/.test(members?.[0] ?? id));
  const disagreeing = comparisonsWhere(["two routes to the chance", routesDiffer(by.chance)]);
  const judged = judgedShareOf(deciding, by);
  return {
    ...levelsOf(judged, disagreeing, false, false, false),
    ...{ judgedShare: judged, reversing: [], isFirm: false, disagreeing },
  };
}

const comparisonsWhere = (...found: ReadonlyArray<readonly [Comparing, boolean]>): Comparing[] =>
  found.flatMap(([name, differs]) => (differs ? [name] : []));

/** Of bars that move the same input only the widest. */
function distinctBars(tornado: readonly TornadoBar[]): TornadoBar[] {
  const named = new Set<string>();
  return tornado.filter(({ id, members }) => {
    const ids = members ?? [id];
    if (ids.some((each) => named.has(each))) return false;
    for (const each of ids) named.add(each);
    return true;
  });
}

const reverses = ({ low, high }: TornadoBar, central: number) =>
  [low, high].some(({ netBenefit }) => Math.sign(netBenefit) !== Math.sign(central));

const isBeyondDoubt = ({ cheaper }: OddsAgainst) =>
  cheaper.value < openChances.low || cheaper.value > openChances.high;

function routesDiffer(chance: ChanceOrigins | undefined): boolean {
  if (!chance || chance.byLaunches.rate === 0 || chance.byLakes.rate === 0) return false;
  const ratio = chance.byLaunches.rate / chance.byLakes.rate;
  return Math.max(ratio, 1 / ratio) > farApart;
}

const isJudgedBar = ({ id, members }: TornadoBar, { assumptions, own }: JudgedBy) =>
  (members ?? [id]).some((each) => {
    const basis = own.has(each) ? undefined : assumptions.entries.get(each)?.basis;
    return basis === "judged" || basis === "from memory";
  });

function judgedShareOf(bars: readonly TornadoBar[], by: JudgedBy): number {
  const weightOf = ({ low, high }: TornadoBar) => (high.netBenefit - low.netBenefit) ** 2;
  const all = sumOf(bars.map(weightOf));
  return all === 0 ? 0 : sumOf(bars.filter((bar) => isJudgedBar(bar, by)).map(weightOf)) / all;
}

const ranks = ["low", "medium", "high"] as const;

function levelsOf(
  judged: number,
  disagreeing: readonly Comparing[],
  isReversed: boolean,
  isReversedByJudged: boolean,
  isFirm: boolean,
): Pick<Confidence, "level" | "evidence" | "agreement"> {
  const evidence: Level =
    judged <= judgedLimits.high ? "high" : judged <= judgedLimits.medium ? "medium" : "low";
  const agreement: Level = ranks[Math.max(0, 2 - disagreeing.length)] ?? "low";
  const most: Level = isReversedByJudged ? "low" : isReversed ? "medium" : "high";
  const level = ranks[Math.min(...[evidence, agreement, most].map((each) => ranks.indexOf(each)))] ?? "low";
  return { level: isFirm ? "high" : level, evidence, agreement };
}
