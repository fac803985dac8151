import { createHash } from "node:crypto";
import { LRUCache } from "lru-cache";
import { isKey, locatorOf } from "../../app/keys.js";
import type { Visitor } from "../../app/visitor.js";
import type { AccessStore, KeptAccessKey } from "../../store/access.js";
import { StoreError } from "../../store/errors.js";
import { type Sessions, sessions } from "./sessions.js";
import { type Slowing, slowing } from "./slowing.js";

/** Unknown name or wrong key: which of them is not told. */
export class WrongKeyError extends Error {}

/** Longer ones are no key of ours, and not worth the work. */
const longestKey = 200;

/** Decides who comes in. All throw StoreError where keys cannot be read and the door must not stand open. */
export interface Door {
  /** Whether a key is needed. */
  readonly isLocked: () => boolean;
  /** @returns the id of a new session; throws WrongKeyError, TooManyTriesError */
  readonly signIn: (name: string, key: string, address: string) => Promise<string>;
  /** Whom a program's key lets in; throws WrongKeyError, TooManyTriesError */
  readonly bearer: (key: string, address: string) => Promise<Visitor>;
  readonly visitorOf: Sessions["visitorOf"];
  readonly signOut: Sessions["end"];
}

/**
 * @param staysShut whether nobody comes in while there are no keys, since others than this machine's users may ask
 * @param slowed makes wrong keys wait
 */
export function door(
  store: AccessStore,
  now: () => Date,
  staysShut: boolean,
  slowed: Slowing = slowing(),
): Door {
  const { begin, visitorOf, end } = sessions(store, now);
  return {
    isLocked: lock(store, staysShut),
    signIn: async (name, key, address) => {
      const kept = await admitted(store.keyOf(name), key, { name, address, slowed });
      return begin(kept.name);
    },
    bearer: bearerDoor(store, slowed),
    visitorOf,
    signOut: end,
  };
}

/** A database out of order keeps nobody from the examples, unless it is known to have had keys: nothing else is in reach. */
function lock(store: AccessStore, staysShut: boolean): Door["isLocked"] {
  let wasLocked = staysShut;
  return () => {
    try {
      wasLocked = staysShut || store.hasKeys();
    } catch (error) {
      if (wasLocked || !(error instanceof StoreError)) throw error;
    }
    return wasLocked;
  };
}

interface Try {
  readonly name: string;
  readonly address: string;
  readonly slowed: Slowing;
}

/** The key is looked at first and at once: wrong ones before it, or beside it, never keep a right one out. */
async function admitted(
  kept: KeptAccessKey | undefined,
  key: string,
  { name, address, slowed }: Try,
): Promise<KeptAccessKey> {
  const countedName = name.slice(0, longestKey);
  if (kept && (await isKey(key.slice(0, longestKey), kept))) {
    await slowed.forget(countedName, address);
    return kept;
  }
  await slowed.hold(countedName, address);
  throw new WrongKeyError();
}

/** A program sends its key each time: one that was found right is known by its digest as long as it is kept. */
function bearerDoor(store: AccessStore, slowed: Slowing): Door["bearer"] {
  const right = new LRUCache<string, Uint8Array>({ max: mostKnown });
  return async (key, address) => {
    const locator = locatorOf(key);
    const kept = store.keyAt(locator);
    const digest = createHash("sha256").update(key).digest("base64");
    const known = right.get(digest);
    if (kept && known && Buffer.from(known).equals(kept.hash)) return visitorBy(kept);
    const found = await admitted(kept, key, { name: locator, address, slowed });
    right.set(digest, found.hash);
    return visitorBy(found);
  };
}

const mostKnown = 200;

const visitorBy = ({ name, role }: KeptAccessKey): Visitor => ({ name, role });
