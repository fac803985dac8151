import { RateLimiterMemory, RateLimiterRes } from "rate-limiter-flexible";

/** Too many failed tries to sign in; nothing is looked at meanwhile, right or wrong. */
export class TooManyTriesError extends Error {
  constructor(readonly waitSeconds: number) {
    super(`too many failed tries; the next in ${waitSeconds} s`);
  }
}

/** Seconds for which failures count. */
const span = 15 * 60;
export const mostFailures = { forName: 5, fromAddress: 30 };

export interface Tries {
  /**
   * Counts a try before it is looked at, so that many at once are counted as well.
   * @returns what takes it back where it succeeded
   * @throws TooManyTriesError
   */
  readonly count: (name: string, address: string) => Promise<() => Promise<void>>;
}

/** Failed tries by name and address together, so that nobody locks another's computer out, and by address. */
export function tries(): Tries {
  const forName = new RateLimiterMemory({ points: mostFailures.forName, duration: span });
  const fromAddress = new RateLimiterMemory({ points: mostFailures.fromAddress, duration: span });
  return {
    count: async (name, address) => {
      const nameHere = JSON.stringify([name.toLowerCase(), address]);
      await consumed(fromAddress, address);
      await consumed(forName, nameHere);
      return async () => {
        await forName.delete(nameHere);
        await fromAddress.reward(address);
      };
    },
  };
}

async function consumed(limiter: RateLimiterMemory, key: string): Promise<void> {
  try {
    await limiter.consume(key);
  } catch (refused) {
    if (!(refused instanceof RateLimiterRes)) throw refused;
    throw new TooManyTriesError(Math.ceil(refused.msBeforeNext / 1000));
  }
}
