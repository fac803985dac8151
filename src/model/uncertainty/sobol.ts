import { at } from "../../lists.js";
import { type RandomStream, randomStream } from "../random/generator.js";
import { requireCount } from "./allowed.js";
import { mostDraws, requireDistinct, type Shares } from "./latin-hypercube.js";
import { joeKuoDirections } from "./sobol-directions.js";

const bits = 32;

/** First dimension by van der Corput, the others from the table. */
export const sobolDimensions = joeKuoDirections.length + 1;

/**
 * The 32 direction numbers of a dimension, 0 the first: v_k = m_k 2^(32−k), with the table's m up to the degree s of
 * the dimension's polynomial and from there v_k = a_1 v_(k−1) ⊕ … ⊕ a_(s−1) v_(k−s+1) ⊕ v_(k−s) ⊕ (v_(k−s) >> s).
 * Source: Joe and Kuo 2008 (see the table).
 * @throws RangeError beyond the dimensions of the table
 */
export function directionNumbers(dimension: number): Uint32Array {
  requireCount("dimension of the Sobol sequence", dimension, 0, sobolDimensions - 1);
  if (dimension === 0) return Uint32Array.from({ length: bits }, (_, k) => 2 ** (bits - 1 - k));
  const { degree, coefficients, initial } = at(joeKuoDirections, dimension - 1);
  const numbers = new Uint32Array(bits);
  for (let k = 0; k < bits; k++) {
    if (k < degree) numbers[k] = at(initial, k) * 2 ** (bits - 1 - k);
    else {
      const first = at(numbers, k - degree);
      let number = first ^ (first >>> degree);
      for (let back = 1; back < degree; back++) {
        if ((coefficients >>> (degree - 1 - back)) & 1) number ^= at(numbers, k - back);
      }
      numbers[k] = number;
    }
  }
  return numbers;
}

/**
 * The first `count` numbers of a sequence with given direction numbers, times 2³², in the order of the Gray code
 * (Antonov and Saleev 1979, from memory), which starts at 0.
 */
export function sequence(directions: Uint32Array, count: number): Uint32Array {
  const numbers = new Uint32Array(count);
  for (let index = 1; index < count; index++) {
    const lowestOne = 31 - Math.clz32(index & -index);
    numbers[index] = at(numbers, index - 1) ^ at(directions, lowestOne);
  }
  return numbers;
}

/**
 * Sobol points scrambled at random: the first id is the first dimension, and so on. Each id's digits are mixed by a
 * random lower triangular matrix and shifted (Matoušek 1998, J. Complexity 14:527-556, from memory), set by seed and
 * id; this keeps how evenly the points fill boxes, and makes each share uniform in (0, 1).
 * An id added at the end leaves the other columns as they are. One added, left out or moved before others gives those
 * after it other dimensions, so other columns: where ids come and go, the Latin hypercube is the plan to take.
 * @throws RangeError unless the count is a power of 2 from 1 to 2²⁰ (other counts lose the balance), each id is given
 * once, and there are dimensions for all
 */
export function scrambledSobol(seed: number, ids: readonly string[], count: number): Shares {
  requireDistinct(ids);
  requireCount("count of draws", count, 1, mostDraws);
  if ((count & (count - 1)) !== 0) {
    throw new RangeError(`count of draws is ${count}; allowed for Sobol points: powers of 2`);
  }
  if (ids.length > sobolDimensions) {
    throw new RangeError(
      `${ids.length} ids for Sobol points; allowed: up to ${sobolDimensions}. Take a Latin hypercube`,
    );
  }
  return new Map(
    ids.map((id, dimension) => {
      const stream = randomStream(seed, `sobol/${id}`);
      const numbers = sequence(mixed(directionNumbers(dimension), stream), count);
      const shift = wordOf(stream);
      return [id, Array.from(numbers, (number) => (((number ^ shift) >>> 0) + 1 / 2) / 2 ** bits)];
    }),
  );
}

/** Product of a random lower triangular matrix of bits with ones on its diagonal, and each direction number. */
function mixed(directions: Uint32Array, stream: RandomStream): Uint32Array {
  const rows = Array.from({ length: bits }, (_, row) => {
    const diagonal = 2 ** (bits - 1 - row);
    const above = (0xffffffff << (bits - 1 - row)) << 1;
    return (wordOf(stream) & above) | diagonal;
  });
  return directions.map((number) => {
    let product = 0;
    for (const row of rows) product = (product << 1) | parity(row & number);
    return product >>> 0;
  });
}

const wordOf = ({ uniform }: RandomStream) => Math.floor(uniform() * 2 ** bits);

function parity(word: number): number {
  let folded = word;
  for (let half = bits / 2; half >= 1; half /= 2) folded ^= folded >>> half;
  return folded & 1;
}
