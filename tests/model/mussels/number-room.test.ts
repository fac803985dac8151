import { describe, expect, it } from "vitest";
import { numberRoom } from "../../../src/model/mussels/number-room.js";

describe("lists of numbers side by side", () => {
  it("are zeros of the length asked for, and none reaches into another", () => {
    const room = numberRoom();
    // The last two each take more than what is left of a long list, and one more than a whole one.
    const lengths = [3, 0, 5000, 3000, 200, 20_000, 7];
    const lists = lengths.map((length) => room(length));
    expect(lists.map((list) => list.length)).toEqual(lengths);
    expect(lists.every((list) => list.every((each) => each === 0))).toBe(true);
    for (const [place, list] of lists.entries()) list.fill(place + 1);
    for (const [place, list] of lists.entries()) expect(list.every((each) => each === place + 1)).toBe(true);
  });

  it("share a long one as far as there is room in it", () => {
    const room = numberRoom();
    const [one, other, whole] = [room(8000), room(192), room(8192)];
    expect(other.buffer).toBe(one.buffer);
    expect(whole.buffer).not.toBe(one.buffer);
  });
});
