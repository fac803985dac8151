import { at } from "../../lists.js";

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
