import { randomBytes, randomInt, type ScryptOptions, scrypt, timingSafeEqual } from "node:crypto";
import type { AccessRole, KeptAccessKey } from "../store/access.js";

/** Letters and digits that nobody takes for one another when a key is read out. */
const letters = "abcdefghjkmnpqrstuvwxyz23456789";
const groupLength = 5;
const secretGroups = 5;

type Parameters = Pick<KeptAccessKey, "cost" | "blockSize" | "parallelization">;

/**
 * 32 kB and less than a thousandth of a second for each try. Stretching helps words that people choose; NIST SP 800-63B
 * (5.1.2.2) asks it of secrets below 112 bits, and these have 124. Dear tries would let wrong keys hold up right ones.
 * Keys of earlier versions keep the parameters that they were made with.
 */
const usual: Parameters = { cost: 2 ** 5, blockSize: 8, parallelization: 1 };
const hashBytes = 32;
const saltBytes = 16;

interface NewAccessKey {
  /** To be shown once and kept nowhere. */
  readonly key: string;
  readonly kept: KeptAccessKey;
}

/** Makes a key for someone. @param parameters of scrypt */
export async function newAccessKey(
  name: string,
  role: AccessRole,
  when: Date,
  parameters: Parameters = usual,
): Promise<NewAccessKey> {
  const locator = randomGroup();
  const key = [locator, ...Array.from({ length: secretGroups }, randomGroup)].join("-");
  const salt = randomBytes(saltBytes);
  const hash = await hashOf(key, salt, parameters);
  return { key, kept: { name, role, addedAt: when.toISOString(), locator, salt, hash, ...parameters } };
}

/** First part of a key, whatever it is. */
export const locatorOf = (key: string): string => key.slice(0, groupLength);

/**
 * Whether a key is the one that is kept. One whose first group is another is not worth a hash: that is quick for a known
 * name as for an unknown one, and only the groups after it are secret.
 */
export async function isKey(key: string, kept: KeptAccessKey): Promise<boolean> {
  if (locatorOf(key) !== kept.locator) return false;
  return timingSafeEqual(await hashOf(key, kept.salt, kept), kept.hash);
}

const randomGroup = (): string =>
  Array.from({ length: groupLength }, () => letters.charAt(randomInt(letters.length))).join("");

function hashOf(key: string, salt: Uint8Array, parameters: Parameters): Promise<Buffer> {
  const { cost, blockSize, parallelization } = parameters;
  const options: ScryptOptions = {
    cost,
    blockSize,
    parallelization,
    maxmem: 2 ** 20 + 256 * cost * blockSize,
  };
  return new Promise((resolve, reject) => {
    scrypt(key, salt, hashBytes, options, (error, hash) => (error ? reject(error) : resolve(hash)));
  });
}
