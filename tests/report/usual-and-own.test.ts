import { describe, expect, it } from "vitest";
import { applyOverrides } from "../../src/assumptions/override.js";
import { formatter } from "../../src/report/words/format.js";
import { ownIn, usualIn } from "../../src/report/words/usual-and-own.js";
import { assumptions } from "./runs.js";

const us = { format: formatter("USD", "us"), factorOf: () => 1 };
const si = { format: formatter("USD", "si"), factorOf: () => 1 };
const entry = (id: string) => {
  const found = assumptions.entries.get(id);
  if (!found) throw new Error(`no assumption ${id}`);
  return found;
};
const own = (id: string, value: string, units: typeof us) => {
  const [applied] = applyOverrides(assumptions, [{ id, value, reason: "weighed" }]).applied;
  if (!applied) throw new Error(`${value} was refused`);
  return ownIn(applied, units);
};

describe("the usual and the own value of an assumption", () => {
  // 500 kg/m3 over 16.018463 kg/m3 to the pound per cubic foot (NIST Handbook 44)
  it("are told in the same unit, the study's", () => {
    expect(usualIn(entry("growth.bulk-density"), us)).toEqual({
      value: "31.21 lb/ft³",
      range: "24.97–49.94 lb/ft³",
      stated: "500 kg/m3",
    });
    expect(own("growth.bulk-density", "450 kg/m3", us)).toBe("28.09 lb/ft³ (typed as 450 kg/m3)");
    expect(own("growth.bulk-density", "28 lb/ft3", us)).toBe("28 lb/ft3");
    expect(own("growth.bulk-density", "28 lb/ft3", si)).toBe("448.5 kg/m³ (typed as 28 lb/ft3)");
  });

  it("are told in the study's money, with what the file states", () => {
    const euros = { ...us, factorOf: () => 2 };
    const { value, stated } = usualIn(entry("labour.maintenance-rate"), euros);
    const { value: inFile, priceYear } = entry("labour.maintenance-rate");
    expect(value).toBe(`$${inFile * 2}/h`);
    expect(stated).toBe(`${inFile} USD/h of ${priceYear}`);
  });

  it("have one unit for every assumption in either system", () => {
    for (const each of assumptions.entries.values()) {
      for (const units of [us, si]) {
        const { value, range } = usualIn(each, units);
        expect(`${value} ${range}`, each.id).not.toMatch(/NaN|undefined|Infinity/);
      }
    }
  });
});
