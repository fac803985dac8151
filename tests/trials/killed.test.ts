import { expect, it } from "vitest";
import { randomStream } from "../../src/model/random/generator.js";
import { folder } from "../store/places.js";
import { killWriters } from "./faults/killed.js";

it("a process killed while it saves, issues and restores loses nothing that it acknowledged", async () => {
  const { uniform } = randomStream(7, "kills");
  const report = await killWriters(folder(), { kills: 8, random: uniform, longestMilliseconds: 200 });
  expect(report.lost).toEqual([]);
  expect(report.saves).toBeGreaterThanOrEqual(report.kills);
});
