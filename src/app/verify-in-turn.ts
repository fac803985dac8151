import type { Kept } from "../issue/authenticity.js";
import type { Claim, Verification } from "../issue/verify.js";
import { QueueFullError } from "../workers/thread-pool.js";
import { verifyApart } from "./verify-apart.js";

/** Files that may wait while one is verified; each may have 24 MB. */
const mostWaiting = 4;

/** Verifies one file after another, each in a process of its own. The result throws QueueFullError where too many wait. */
export function verifyInTurn(verify: typeof verifyApart = verifyApart) {
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();
  return (pdf: Uint8Array, kept: (claim: Claim | undefined) => Kept): Promise<Verification> => {
    if (waiting > mostWaiting) return Promise.reject(new QueueFullError());
    waiting += 1;
    const turn = last
      .then(() => verify(pdf, kept))
      .finally(() => {
        waiting -= 1;
      });
    last = turn.catch(() => undefined);
    return turn;
  };
}
