import { describe, expect, it } from "vitest";
import { growthOf, isSteep, type Reader } from "./growth/measure.js";
import { allReaders } from "./growth/readers.js";
import { adversaries } from "./growth/texts.js";

/** Short of what the trial by hand tries. A text of which the square counts takes noticed time long before. */
const most = 16_000;

/** Waiting alone: what is held against anything is processor time. */
const onBusyMachine = 300_000;

const blanks = adversaries.find(({ name }) => name === "blanks in a quantity") ?? expect.fail();

describe("no text takes time that grows faster than it", () => {
  const readers = allReaders();

  it.each(readers.map((reader) => [reader.name, reader] as const))(
    "%s",
    (_name, reader) => {
      expect(adversaries.map((adversary) => growthOf(reader, adversary, most)).filter(isSteep)).toEqual([]);
    },
    onBusyMachine,
  );
});

describe("the measure of growth", () => {
  const reader = (read: Reader["read"]): Reader => ({ name: "a reader", most: 1e6, read });

  it("tells a reader of whose text the square counts", () => {
    const square = reader((text) => /\s+x$/.test(text.replaceAll("x", "y")));
    expect(isSteep(growthOf(square, blanks, 64 * 1024))).toBe(true);
  });

  it("lets a slow reader pass whose time grows as its text does", () => {
    const slow = reader((text) => {
      for (let round = 0; round < 200; round += 1) text.split("").reverse().join("");
    });
    const growth = growthOf(slow, blanks, 64 * 1024);
    expect(growth.ratio).toBeDefined();
    expect(isSteep(growth)).toBe(false);
  });

  it("says nothing of a reader that takes no time worth telling", () => {
    expect(
      growthOf(
        reader((text) => text.length),
        blanks,
        64 * 1024,
      ).ratio,
    ).toBeUndefined();
  });
});
