import { setImmediate as nextTurn } from "node:timers/promises";
import { at } from "../../lists.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { ComparedStudy } from "./assumption-differences.js";
import { type EffectOf, groupsByEffect } from "./by-effect.js";
import type { InputDifference } from "./input-differences.js";
import type { InputGroup } from "./input-groups.js";
import { type Between, between } from "./intermediate-studies.js";
import { type Coalition, everyCoalition, shapleyValues, type WorthOf } from "./shapley.js";
import { heldBy, membersOf, type Players, soundPlayers, worthOfPlayers } from "./sound-groups.js";
import { type WholeAmounts, wholeAmounts, wholeParts } from "./whole-parts.js";

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
}

export interface Explanation {
  readonly left: ExplainedCents;
  readonly right: ExplainedCents;
  /** Their sum is right minus left, to the cent. */
  readonly parts: readonly ExplainedPart[];
  /** The same in whole units of money, as they are printed. */
  readonly whole: Readonly<Record<keyof ExplainedCents, WholeAmounts | undefined>>;
}

/** Most groups, of which every order is taken: 256 comparisons. */
const mostGroups = 8;
/** From so many structures on a comparison takes long enough that fewer are made: 64. */
const manyStructures = 100;
const mostGroupsOfMany = 6;

/**
 * How much of the difference between two studies each changed input explains: its Shapley value, the mean of what its
 * change adds over all orders in which the changes may be made, every study between the two by the exact comparison. It
 * depends on no order, gives nothing to a change that does nothing, and adds up. Where there are too many changes,
 * those that move figures least by themselves are one. Changes of which some alone would make a study that contradicts itself are
 * explained as one. Other work gets its turn between comparisons.
 */
export async function explainDifference(
  left: ComparedStudy,
  right: ComparedStudy,
  differences: readonly InputDifference[],
): Promise<Explanation> {
  const largest = Math.max(left.document.structures.length, right.document.structures.length);
  const moving = differences.filter(({ movesFigures }) => movesFigures).map(({ place }) => place);
  const studies = between(left, right, new Set(moving), requestOf(left, right));
  const most = largest < manyStructures ? mostGroups : mostGroupsOfMany;
  const groups = await groupsByEffect(differences, most, effectsIn(studies, moving));
  const placesOf = (held: Coalition) =>
    new Set(
      membersOf(held, groups.length).flatMap((group) => at(groups, group).inputs.map(({ place }) => place)),
    );
  const players = await soundPlayers(
    groups.length,
    remembered(async (held) => {
      await nextTurn();
      return studies.isSound(placesOf(held));
    }),
  );
  const needed = everyCoalition(players.length).map((coalition) => heldBy(coalition, players));
  const worths = await worthsOf(new Set(needed), placesOf, studies);
  return explanation(groups, players, worthOfPlayers(worths, players));
}

/** What a group's change moves by itself, from either study; the larger, of the first amount that is told. */
function effectsIn(studies: Between, moving: readonly string[]): EffectOf {
  const worthOf = (places: readonly string[]): number | undefined => {
    const held = new Set(places);
    if (!studies.isSound(held)) return undefined;
    const { netBenefit, infestation } = studies.worth(held);
    return (netBenefit ?? infestation).times(centsPerUnit).toNumber();
  };
  const [left, right] = [worthOf([]), worthOf(moving)];
  return async ({ inputs }) => {
    await nextTurn();
    const own = new Set(inputs.map(({ place }) => place));
    const others = moving.filter((place) => !own.has(place));
    const sizes = [
      [worthOf([...own]), left],
      [worthOf(others), right],
    ].flatMap(([one, other]) => (one === undefined || other === undefined ? [] : [Math.abs(one - other)]));
    return sizes.length === 0 ? undefined : Math.max(...sizes);
  };
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

/** Net benefit, where one option is requested, and cost of an infestation, by what is held. */
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

function explanation(groups: readonly InputGroup[], players: Players, worthOf: WorthOf): Explanation {
  const values = shapleyValues(players.length, worthOf);
  const [first, last] = [worthOf(0), worthOf(2 ** players.length - 1)].map((worth) => worth.map(Math.round));
  const parts = (first ?? []).map((before, figure) =>
    wholeParts(
      values.map((value) => at(value, figure)),
      at(last ?? [], figure) - before,
    ),
  );
  const explained = {
    left: cents(first),
    right: cents(last),
    parts: players.map((held, player) => ({
      ...cents(parts.map((part) => at(part, player))),
      groups: membersOf(held, groups.length).map((group) => at(groups, group)),
    })),
  };
  return { ...explained, whole: wholeOf(explained) };
}

function wholeOf({
  left,
  right,
  parts,
}: Pick<Explanation, "left" | "right" | "parts">): Explanation["whole"] {
  const whole = (figure: keyof ExplainedCents) =>
    wholeAmounts({
      left: left[figure],
      right: right[figure],
      parts: parts.map((part) => part[figure] ?? 0),
    });
  return { infestation: whole("infestation"), netBenefit: whole("netBenefit") };
}

const cents = ([infestation = 0, netBenefit]: readonly number[] = []): ExplainedCents => ({
  infestation,
  netBenefit,
});
