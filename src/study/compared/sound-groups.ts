import { type Coalition, everyCoalition, sizeOf } from "./shapley.js";

/** Players as the groups they hold, in bits. */
export type Players = readonly Coalition[];

/** Groups held by a coalition of players. */
export const heldBy = (coalition: Coalition, players: Players): Coalition =>
  players.reduce((held, bits, player) => ((coalition & (1 << player)) === 0 ? held : held | bits), 0);

/** Positions of the set bits. */
export const membersOf = (coalition: Coalition, count: number): number[] =>
  Array.from({ length: count }, (_, player) => player).filter((player) => (coalition & (1 << player)) !== 0);

/** Whether what is held makes a study that says nothing against itself. None and all do. */
type SoundTest = (held: Coalition) => Promise<boolean>;

/**
 * Players whose coalitions are all sound: where one is not, players are made one until they are.
 */
export async function soundPlayers(count: number, isSound: SoundTest): Promise<Players> {
  let players: Players = Array.from({ length: count }, (_, group) => 1 << group);
  for (;;) {
    const ofPlayers: SoundTest = (coalition) => isSound(heldBy(coalition, players));
    const unsound = await firstUnsound(everyCoalition(players.length), ofPlayers);
    if (unsound === undefined) return players;
    players = joined(players, await playersToJoin(unsound, players.length, ofPlayers));
  }
}

/** Smaller coalitions first: an unsound one makes larger ones unsound. */
async function firstUnsound(
  needed: readonly Coalition[],
  isSound: SoundTest,
): Promise<Coalition | undefined> {
  const bySize = needed.toSorted((one, other) => sizeOf(one) - sizeOf(other) || one - other);
  for (const coalition of bySize) if (!(await isSound(coalition))) return coalition;
  return undefined;
}

/**
 * The smallest sound coalition found around the core of an unsound one, both by removing one player at a time.
 */
async function playersToJoin(unsound: Coalition, count: number, isSound: SoundTest): Promise<Coalition> {
  let core = unsound;
  for (const player of membersOf(unsound, count)) {
    const rest = core & ~(1 << player);
    if (!(await isSound(rest))) core = rest;
  }
  let around = 2 ** count - 1;
  for (const player of membersOf(around & ~core, count)) {
    const rest = around & ~(1 << player);
    if (await isSound(rest)) around = rest;
  }
  return around;
}

/** The players with some of them merged in place of the first. */
function joined(players: Players, toJoin: Coalition): Players {
  const [first] = membersOf(toJoin, players.length);
  return players.flatMap((bits, player) => {
    if (player === first) return [heldBy(toJoin, players)];
    return (toJoin & (1 << player)) === 0 ? [bits] : [];
  });
}

/** Worths by coalition of players, from those by groups held. */
export const worthOfPlayers =
  (worths: ReadonlyMap<Coalition, readonly number[]>, players: Players) =>
  (coalition: Coalition): readonly number[] => {
    const worth = worths.get(heldBy(coalition, players));
    if (!worth)
      throw new Error(`a coalition that was not worked out: ${membersOf(coalition, players.length)}`);
    return worth;
  };
