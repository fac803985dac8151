import { createHash } from "node:crypto";
import { setTimeout as sleep } from "node:timers/promises";
import { RateLimiterMemory } from "rate-limiter-flexible";
import { networkOf } from "./network.js";

/** The key is wrong, and as many wrong ones wait for their answer already as may: this one is answered at once. */
export class TooManyTriesError extends Error {
  constructor(readonly waitSeconds: number) {
    super(`too many wrong keys wait for their answer; try again in ${waitSeconds} s`);
  }
}

/** Seconds for which failures count, from the first on. */
const span = 15 * 60;
/** No number of failures is refused: they are counted alone. */
const counting = { points: 0, duration: span };

/** Milliseconds: the first answer to a wrong key, doubled for each failure of a name, and the longest. */
const shortest = 250;
export const longest = 8000;

/** Failures from one address that double its delay: many people may stand behind it. */
const doublesEvery = 10;

/** Wrong keys that wait for their answer. Each holds a connection, which is let go after `longest`. */
export const mostWaiting = { ofName: 3, ofAddress: 20, inAll: 200 };

/** Counters in which names and addresses share their failures, so that no crowd of them fills the memory. */
const counters = 4096;

export interface Slowing {
  /** Waits before a wrong key is answered, also where the asker leaves meanwhile. @throws TooManyTriesError */
  readonly hold: (name: string, address: string) => Promise<void>;
  /** Forgets the failures of a name from an address, from where its right key came. */
  readonly forget: (name: string, address: string) => Promise<void>;
}

/**
 * Makes guessing slow: each wrong key is answered later than the one before, by name and address together and by address.
 * Nobody is locked out by it: a right key is let in whatever wrong ones came before or wait meanwhile, since otherwise
 * one program with an old key would shut out everyone behind its address.
 *
 * Slowing is enough because nobody chooses his key. The letters after its first group are 25 out of 31, drawn at random:
 * 25 × log2 31 = 124 bits. A million tries a second for a thousand years are 3 × 10^16 of 2 × 10^37 keys. For the same
 * reason it does no harm that those beyond the bound learn at once that they are wrong, as they must where right ones
 * never wait; what is bounded is the memory and the connections that they take.
 *
 * @param wait given the milliseconds
 */
export function slowing(wait: (milliseconds: number) => Promise<unknown> = sleep): Slowing {
  const ofName = new RateLimiterMemory(counting);
  const ofAddress = new RateLimiterMemory(counting);
  const waiting = waitingRoom();
  return {
    hold: async (name, address) => {
      const [nameKey, networkKey] = [
        counterOf(name.toLowerCase(), networkOf(address)),
        counterOf(networkOf(address)),
      ];
      const { consumedPoints: byName } = await ofName.penalty(nameKey);
      const { consumedPoints: byAddress } = await ofAddress.penalty(networkKey);
      const delay = Math.max(delayAfter(byName), delayAfter(byAddress / doublesEvery));
      const leave = waiting.enter(nameKey, networkKey);
      if (!leave) throw new TooManyTriesError(Math.ceil(delay / 1000));
      try {
        await wait(delay);
      } finally {
        leave();
      }
    },
    forget: async (name, address) => {
      await ofName.delete(counterOf(name.toLowerCase(), networkOf(address)));
    },
  };
}

const delayAfter = (failures: number): number => Math.min(longest, shortest * 2 ** (Math.ceil(failures) - 1));

const counterOf = (...what: readonly string[]): string => {
  const digest = createHash("sha256").update(JSON.stringify(what)).digest();
  return `${what.length} ${digest.readUInt32BE() % counters}`;
};

/** Who waits, by what they share. @returns of `enter` what lets the place go; undefined where there is none */
function waitingRoom() {
  const places = new Map<string, number>();
  const change = (key: string, by: number) => {
    const now = (places.get(key) ?? 0) + by;
    if (now > 0) places.set(key, now);
    else places.delete(key);
  };
  return {
    enter: (nameKey: string, networkKey: string): (() => void) | undefined => {
      const taken = [
        { key: nameKey, most: mostWaiting.ofName },
        { key: networkKey, most: mostWaiting.ofAddress },
        { key: "all", most: mostWaiting.inAll },
      ];
      if (taken.some(({ key, most }) => (places.get(key) ?? 0) >= most)) return undefined;
      for (const { key } of taken) change(key, 1);
      return () => {
        for (const { key } of taken) change(key, -1);
      };
    },
  };
}
