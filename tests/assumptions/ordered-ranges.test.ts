import { describe, expect, test } from "vitest";
import { realSet } from "./real.js";

const { entries } = realSet();

/** Limits that mean something only in this order, each below the next. */
const families: ReadonlyArray<readonly [family: string, ...names: string[]]> = [
  ...["calcium.whittier", "calcium.mackie-claudi", "alkalinity", "hardness", "oxygen", "conductivity"].map(
    (water) => [`suitability.${water}.`, "low-from", "moderate-from", "high-from"] as const,
  ),
  ["suitability.ph.", "low-from", "moderate-from", "high-from", "high-to", "moderate-to", "low-to"],
  ["suitability.salinity.", "high-to", "moderate-to", "low-to"],
  ["suitability.temperature.", "moderate-from", "high-from", "high-to", "low-to"],
  ["settlement.", "full-velocity", "no-velocity"],
  ["settlement.", "full-depth.zebra", "no-depth.zebra"],
  ["settlement.", "full-depth.quagga", "no-depth.quagga"],
  ["settlement.", "spawning-temperature.zebra", "upper-temperature"],
  ["settlement.", "spawning-temperature.quagga", "upper-temperature"],
  ["oxidant.kill-hours.", "warm", "cold"],
  ["hydraulics.", "open-cover", "closed-cover"],
  ["taste-odour.", "from-temperature", "full-temperature"],
  ["taste-odour.", "phosphorus-full", "phosphorus-none"],
];

describe("ranges of limits that have an order", () => {
  test.each(families)("leave them in it whatever is drawn: %s", (family, ...names) => {
    const limits = names.map((name) => {
      const entry = entries.get(`${family}${name}`);
      if (!entry) throw new Error(`no assumption ${family}${name}`);
      return entry;
    });
    limits.forEach(({ id, low }, index) => {
      const before = limits[index - 1];
      if (before) expect(before.high, `${before.id} against ${id}`).toBeLessThanOrEqual(low);
    });
  });
});
