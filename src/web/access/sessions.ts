import { createHash, randomBytes } from "node:crypto";
import type { Visitor } from "../../app/visitor.js";
import type { AccessStore } from "../../store/access.js";
import { StoreError } from "../../store/errors.js";

const hour = 3_600_000;

/** Milliseconds after which a session ends, however it is used, and without use. */
export const sessionLimits = { whole: 7 * 24 * hour, idle: 4 * hour };

/** Its use is written down no more often than this, so that reading pages writes little. */
const touchEvery = 60_000;

export interface Sessions {
  /** @returns the id for the browser to hold; it is kept nowhere else */
  readonly begin: (name: string) => string;
  readonly visitorOf: (id: string) => Visitor | undefined;
  readonly end: (id: string) => void;
}

export function sessions(store: AccessStore, now: () => Date): Sessions {
  return {
    begin: (name) => {
      const id = randomBytes(32).toString("base64url");
      const time = now().getTime();
      const ended = { startedAt: time - sessionLimits.whole, usedAt: time - sessionLimits.idle };
      store.begin({ digest: digestOf(id), name, startedAt: time, usedAt: time }, ended);
      return id;
    },
    visitorOf: (id) => {
      const time = now().getTime();
      const session = store.session(digestOf(id));
      if (!session) return undefined;
      const { digest, name, role, startedAt, usedAt } = session;
      if (time - startedAt >= sessionLimits.whole || time - usedAt >= sessionLimits.idle) return undefined;
      if (time - usedAt >= touchEvery) touch(store, digest, time);
      return { name, role };
    },
    end: (id) => store.end(digestOf(id)),
  };
}

/** A full disk keeps nobody from reading. */
function touch(store: AccessStore, digest: Uint8Array, time: number): void {
  try {
    store.touch(digest, time);
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
  }
}

const digestOf = (id: string): Uint8Array => createHash("sha256").update(id).digest();
