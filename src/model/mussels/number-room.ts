/** Numbers of a long list. */
const together = 8192;

/** Gives out lists of zeros. */
export type NumberRoom = (length: number) => Float64Array;

/** Lists side by side in long ones: hundreds of lists of a lake, each by itself, take a fiftieth of its time. */
export function numberRoom(): NumberRoom {
  let room = new Float64Array(0);
  let taken = 0;
  return (length) => {
    if (taken + length > room.length) {
      room = new Float64Array(Math.max(together, length));
      taken = 0;
    }
    taken += length;
    return room.subarray(taken - length, taken);
  };
}
