import { at } from "../../model/lists.js";
import { randomStream } from "../../model/random/generator.js";

/** Some of the players, as bits: player 0 is 1, player 1 is 2, player 2 is 4. */
export type Coalition = number;

/** Worths of a coalition, several side by side. */
export type WorthOf = (coalition: Coalition) => readonly number[];

export const everyCoalition = (players: number): Coalition[] =>
  Array.from({ length: 2 ** players }, (_, coalition) => coalition);

/**
 * Shapley values: what each player adds to those before it, averaged over all orders.
 * φ(i) = Σ over S without i of s! (n − s − 1)!/n! · (v(S and i) − v(S)). They add up to v(all) − v(none).
 * Shapley L.S. 1953. A value for n-person games. In: Contributions to the Theory of Games II, 307–317 (from memory).
 * @returns one value per worth for each player
 */
export function shapleyValues(players: number, worthOf: WorthOf): number[][] {
  const weights = weightsBySize(players);
  return Array.from({ length: players }, (_, player) => {
    const without = everyCoalition(players).filter((coalition) => !holds(coalition, player));
    return sumOf(
      without.map((coalition) =>
        gain(worthOf, coalition, player).map((added) => added * at(weights, sizeOf(coalition))),
      ),
    );
  });
}

/** s! (n − s − 1)!/n! for each size s of the coalition joined. */
function weightsBySize(players: number): number[] {
  const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
  return Array.from(
    { length: players },
    (_, size) => (factorial(size) * factorial(players - size - 1)) / factorial(players),
  );
}

const holds = (coalition: Coalition, player: number) => (coalition & (1 << player)) !== 0;
export const sizeOf = (coalition: Coalition): number =>
  coalition === 0 ? 0 : (coalition & 1) + sizeOf(coalition >>> 1);

function gain(worthOf: WorthOf, coalition: Coalition, player: number): number[] {
  const before = worthOf(coalition);
  return worthOf(coalition | (1 << player)).map((worth, index) => worth - at(before, index));
}

const sumOf = (lists: readonly number[][]): number[] =>
  lists.reduce((sum, list) => list.map((value, index) => value + (sum[index] ?? 0)), []);

/** Orders of players, drawn with a seed, each followed by its reverse. */
export function drawnOrders(players: number, count: number, seed: number): number[][] {
  const { uniform } = randomStream(seed, "orders of changed inputs");
  return Array.from({ length: Math.ceil(count / 2) }, () => {
    const order = shuffled(players, uniform);
    return [order, order.toReversed()];
  }).flat();
}

/** Fisher and Yates: all orders are equally likely. */
function shuffled(players: number, uniform: () => number): number[] {
  const order = Array.from({ length: players }, (_, player) => player);
  for (let last = players - 1; last > 0; last--) {
    const other = Math.floor(uniform() * (last + 1));
    const moved = at(order, last);
    order[last] = at(order, other);
    order[other] = moved;
  }
  return order;
}

/** The coalitions that orders pass through, from none to all. */
export function coalitionsOf(order: readonly number[]): Coalition[] {
  const passed: Coalition[] = [0];
  for (const player of order) passed.push(at(passed, passed.length - 1) | (1 << player));
  return passed;
}

export interface SampledValue {
  /** Means over the orders; they too add up to v(all) − v(none). */
  readonly values: readonly number[];
  /** Standard errors of the means, an order and its reverse being one draw. */
  readonly errors: readonly number[];
}

/** Shapley values estimated from some orders, as `drawnOrders` gives them. */
export function sampledValues(orders: ReadonlyArray<readonly number[]>, worthOf: WorthOf): SampledValue[] {
  const players = orders[0]?.length ?? 0;
  const gains = orders.map((order) => gainsIn(order, worthOf));
  return Array.from({ length: players }, (_, player) => {
    const pairs = gains
      .map((byPlayer) => at(byPlayer, player))
      .flatMap((first, index, all) => (index % 2 === 0 ? [meanOf([first, at(all, index + 1)])] : []));
    const values = meanOf(pairs);
    return {
      values,
      errors: values.map((value, index) =>
        errorOf(
          pairs.map((pair) => at(pair, index)),
          value,
        ),
      ),
    };
  });
}

function gainsIn(order: readonly number[], worthOf: WorthOf): number[][] {
  const coalitions = coalitionsOf(order);
  const byPlayer: number[][] = [];
  order.forEach((player, place) => {
    byPlayer[player] = gain(worthOf, at(coalitions, place), player);
  });
  return byPlayer;
}

const meanOf = (lists: readonly number[][]): number[] => sumOf(lists).map((sum) => sum / lists.length);

function errorOf(draws: readonly number[], mean: number): number {
  const squares = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0);
  return draws.length < 2 ? 0 : Math.sqrt(squares / (draws.length - 1) / draws.length);
}
