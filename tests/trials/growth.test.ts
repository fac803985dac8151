import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { projectRoot } from "../../src/project-root.js";
import { growthOf, isSteep, type Reader } from "./growth/measure.js";
import { allReaders } from "./growth/readers.js";
import { adversaries } from "./growth/texts.js";

/** Short of what the trial by hand tries. A text of which the square counts takes noticed time long before. */
const most = "16000";

const blanks = adversaries.find(({ name }) => name === "blanks in a quantity") ?? expect.fail();

describe("no text takes time that grows faster than it", () => {
  // In a process of its own, without the memory that other tests hold.
  const trial = ["--single-threaded-gc", "--max-semi-space-size=64", join("out", "trials", "growth.js")];
  let lines: readonly string[] = [];

  beforeAll(() => {
    const { stdout } = spawnSync(process.execPath, [...trial, "--most", most], {
      cwd: projectRoot,
      encoding: "utf8",
    });
    lines = stdout.split("\n");
  });

  it.each(allReaders().map(({ name }) => name))("%s", (name) => {
    const told = lines.filter((line) => line.startsWith(name));
    expect(told).toContainEqual(expect.stringContaining(`over ${adversaries.length} texts`));
    expect(told.filter((line) => line.endsWith("grows too fast")).join("\n")).toBe("");
  });
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
