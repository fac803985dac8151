import { setImmediate as nextTurn } from "node:timers/promises";
import { at } from "../../model/lists.js";
import { centsPerUnit } from "../../model/money/line.js";
import type { ComparedStudy } from "./assumption-differences.js";
import { type Between, between } from "./between.js";
import type { InputDifference } from "./input-differences.js";
import { type InputGroup, inputGroups } from "./input-groups.js";
import { heldBy, membersOf, type Players, soundPlayers, worthOfPlayers } from "./players.js";
import {
  type Coalition,
  coalitionsOf,
  drawnOrders,
  everyCoalition,
  sampledValues,
  shapleyValues,
  type WorthOf,
} from "./shapley.js";
import { wholeParts } from "./whole-parts.js";

/** Present values to be explained, in cents. */
export interface ExplainedCents {
  /** Of the requested option; absent if the studies request different ones. */
  readonly netBenefit: number | undefined;
  /** Expected cost of an infestation without a program. */
  readonly infestation: number;
}

/** Part of the difference, and the changed inputs that explain it. */
export interface ExplainedPart extends ExplainedCents {
  /** One group, or several explained as one because some alone would contradict the study. */
  readonly groups: readonly InputGroup[];
  /** Standard errors in cents; absent if all orders were used. */
  readonly errors: ExplainedCents | undefined;
}

export interface Explanation {
  readonly left: ExplainedCents;
  readonly right: ExplainedCents;
  /** Their sum is right minus left, to the cent. */
  readonly parts: readonly ExplainedPart[];
  /** Number of orders drawn; absent if all were used. */
  readonly orders: number | undefined;
}

interface Settings {
  readonly seed: number;
  /** Most groups for which all orders are used. */
  readonly mostExact: number;
  readonly mostComparisons: number;
}

export const explainSettings: Settings = { seed: 1, mostExact: 8, mostComparisons: 300 };
/** Number of structures from which fewer comparisons are made, as each takes long. */
const manyStructures = 100;
const settingsOfMany: Settings = { seed: 1, mostExact: 6, mostComparisons: 64 };

/**
 * How much of the difference between two studies each changed input explains: its Shapley value, the mean effect of its
 * change over all orders of the changes, with an exact comparison of every mixture. Shapley values do not depend on
 * order, give nothing to a change without effect, and add up. Too many changes are grouped by place; with too many
 * groups, orders are drawn. Changes that contradict the study unless made together are explained as one. Other work
 * gets its turn between comparisons.
 */
export async function explainDifference(
  left: ComparedStudy,
  right: ComparedStudy,
  differences: readonly InputDifference[],
): Promise<Explanation> {
  const largest = Math.max(left.document.structures.length, right.document.structures.length);
  const settings = largest < manyStructures ? explainSettings : settingsOfMany;
  const groups = inputGroups(differences, settings.mostExact);
  const placesOf = (held: Coalition) =>
    new Set(
      membersOf(held, groups.length).flatMap((group) => at(groups, group).inputs.map(({ place }) => place)),
    );
  const studies = between(left, right, placesOf(2 ** groups.length - 1), requestOf(left, right));
  const players = await soundPlayers(
    groups.length,
    (some) => coalitionsNeeded(some.length, settings),
    remembered(async (held) => {
      await nextTurn();
      return studies.isSound(placesOf(held));
    }),
  );
  const needed = coalitionsNeeded(players.length, settings).map((coalition) => heldBy(coalition, players));
  const worths = await worthsOf(new Set(needed), placesOf, studies);
  return explanation(groups, players, worthOfPlayers(worths, players), settings);
}

/** The option requested by both studies. */
function requestOf(left: ComparedStudy, right: ComparedStudy): string | undefined {
  const [one, other] = [left, right].map(({ document }) => document.study.requestedOption);
  return one === other ? one : undefined;
}

function remembered<Answer>(ask: (held: Coalition) => Promise<Answer>): (held: Coalition) => Promise<Answer> {
  const known = new Map<Coalition, Promise<Answer>>();
  return (held) => {
    const answer = known.get(held) ?? ask(held);
    known.set(held, answer);
    return answer;
  };
}

/** Undefined stands for all orders. */
function ordersDrawn(players: number, { mostExact, mostComparisons, seed }: Settings) {
  if (players <= mostExact) return undefined;
  return drawnOrders(players, 2 * Math.floor((mostComparisons - 2) / (players - 1) / 2), seed);
}

function coalitionsNeeded(players: number, settings: Settings): Coalition[] {
  const orders = ordersDrawn(players, settings);
  return orders ? [...new Set(orders.flatMap(coalitionsOf))] : everyCoalition(players);
}

/** Cost of an infestation and, if one option is requested, net benefit, by coalition. */
async function worthsOf(
  needed: ReadonlySet<Coalition>,
  placesOf: (held: Coalition) => ReadonlySet<string>,
  studies: Between,
): Promise<Map<Coalition, readonly number[]>> {
  const ordered = [...needed]
    .map((held) => ({ held, places: placesOf(held), lake: studies.lakeKey(placesOf(held)) }))
    .sort((one, other) => (one.lake < other.lake ? -1 : Number(one.lake > other.lake)));
  const worths = new Map<Coalition, readonly number[]>();
  for (const { held, places } of ordered) {
    await nextTurn();
    const { infestation, netBenefit } = studies.worth(places);
    const amounts = [infestation, ...(netBenefit ? [netBenefit] : [])];
    worths.set(
      held,
      amounts.map((amount) => amount.times(centsPerUnit).toNumber()),
    );
  }
  return worths;
}

function explanation(
  groups: readonly InputGroup[],
  players: Players,
  worthOf: WorthOf,
  settings: Settings,
): Explanation {
  const orders = ordersDrawn(players.length, settings);
  const sampled = orders && sampledValues(orders, worthOf);
  const values = sampled?.map((each) => each.values) ?? shapleyValues(players.length, worthOf);
  const [first, last] = [worthOf(0), worthOf(2 ** players.length - 1)].map((worth) => worth.map(Math.round));
  const parts = (first ?? []).map((before, figure) =>
    wholeParts(
      values.map((value) => at(value, figure)),
      at(last ?? [], figure) - before,
    ),
  );
  return {
    left: cents(first),
    right: cents(last),
    parts: players.map((held, player) => ({
      ...cents(parts.map((part) => at(part, player))),
      groups: membersOf(held, groups.length).map((group) => at(groups, group)),
      errors: sampled && cents(at(sampled, player).errors.map(Math.ceil)),
    })),
    orders: orders?.length,
  };
}

const cents = ([infestation = 0, netBenefit]: readonly number[] = []): ExplainedCents => ({
  infestation,
  netBenefit,
});
