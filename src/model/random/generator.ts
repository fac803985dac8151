/** One stream of random numbers. Each call moves the stream on; two streams never share a state. */
export interface RandomStream {
  /** Uniform in [0, 1), a multiple of 2⁻⁵³. */
  readonly uniform: () => number;
  /** Exponential with the given mean, by inversion: −mean · ln(1 − u). Finite, since u < 1; 1 − u is exact. */
  readonly exponential: (mean: number) => number;
}

/** Four words of 32 bits, not all zero. */
type GeneratorState = readonly [number, number, number, number];

/**
 * The stream of a seed and a text: the same pair always gives the same numbers, whatever other streams are made
 * before it, so that one more dock or day type leaves all other draws alone.
 * The state is two outputs of SplitMix64 from the FNV-1a hash of "seed/id". They cannot both be zero, since
 * SplitMix64 maps different counters to different outputs.
 * @throws RangeError if the seed is no whole number from 0 to 2⁵³ − 1
 */
export function randomStream(seed: number, id: string): RandomStream {
  if (!Number.isSafeInteger(seed) || seed < 0) {
    throw new RangeError(`seed is ${seed}; allowed whole numbers from 0 to ${Number.MAX_SAFE_INTEGER}`);
  }
  const word = splitMix64(fnv1a64(`${seed}/${id}`));
  const [first, second] = [word(), word()];
  const next = xoshiro128([high(first), low(first), high(second), low(second)]);
  const uniform = () => ((next() >>> 5) * 2 ** 26 + (next() >>> 6)) * 2 ** -53;
  return { uniform, exponential: (mean) => -mean * Math.log(1 - uniform()) };
}

const high = (word: bigint) => Number(word >> 32n);
const low = (word: bigint) => Number(BigInt.asUintN(32, word));

/**
 * xoshiro128** 1.1 by Blackman and Vigna: whole numbers of 32 bits, period 2¹²⁸ − 1.
 * Source: Blackman and Vigna 2021, Scrambled linear pseudorandom number generators (from memory), and the
 * reference xoshiro128starstar.c.
 */
export function xoshiro128(state: GeneratorState): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return result;
  };
}

const rotate = (word: number, by: number) => (word << by) | (word >>> (32 - by));

/** SplitMix64 by Vigna (reference splitmix64.c), which its author recommends for seeding the xoshiro family. */
export function splitMix64(seed: bigint): () => bigint {
  let counter = seed;
  return () => {
    counter = BigInt.asUintN(64, counter + 0x9e3779b97f4a7c15n);
    let word = counter;
    word = BigInt.asUintN(64, (word ^ (word >> 30n)) * 0xbf58476d1ce4e5b9n);
    word = BigInt.asUintN(64, (word ^ (word >> 27n)) * 0x94d049bb133111ebn);
    return word ^ (word >> 31n);
  };
}

/** FNV-1a hash of 64 bits, by Fowler, Noll and Vo, of a text in UTF-8. */
export function fnv1a64(text: string): bigint {
  let upper = 0xcbf29ce4;
  let lower = 0x84222325;
  const bytes = utf8.encode(text);
  for (let index = 0; index < bytes.length; index++) {
    lower ^= bytes[index] ?? 0;
    // Times 2^40 + 0x1b3, by halves of 32 bits, the lower one by its own halves.
    const last = (lower & 0xffff) * 0x1b3;
    const first = (lower >>> 16) * 0x1b3 + (last >>> 16);
    upper = (Math.imul(upper, 0x1b3) + (first >>> 16) + (lower << 8)) | 0;
    lower = (first << 16) | (last & 0xffff);
  }
  return (BigInt(upper >>> 0) << 32n) | BigInt(lower >>> 0);
}

const utf8 = new TextEncoder();
