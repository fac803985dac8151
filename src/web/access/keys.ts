import { randomBytes, randomInt, type ScryptOptions, scrypt, timingSafeEqual } from "node:crypto";
import type { AccessRole, KeptAccessKey } from "../../store/access.js";

/** Letters and digits that nobody takes for one another when a key is read out. */
const letters = "abcdefghjkmnpqrstuvwxyz23456789";
const groupLength = 5;
const secretGroups = 5;

type Parameters = Pick<KeptAccessKey, "cost" | "blockSize" | "parallelization">;

/** 16 MB and a few hundredths of a second for each try; keys of 124 random bits need no more. */
const usual: Parameters = { cost: 2 ** 14, blockSize: 8, parallelization: 1 };
const hashBytes = 32;
const saltBytes = 16;

export interface NewAccessKey {
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

/** Whether a key is the one that is kept; takes as long where none is. */
export async function isKey(key: string, kept: KeptAccessKey | undefined): Promise<boolean> {
  const compared = kept ?? nobody;
  const hash = await hashOf(key, compared.salt, compared);
  return timingSafeEqual(hash, compared.hash) && kept !== undefined;
}

const nobody = { ...usual, salt: randomBytes(saltBytes), hash: randomBytes(hashBytes) };

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
