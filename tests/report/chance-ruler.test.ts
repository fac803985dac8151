import { describe, expect, it } from "vitest";
import { chanceRuler, type RulerChance } from "../../src/report/ramp/chance-ruler.js";

const chance = (name: string): RulerChance => ({ name, middle: 0.02, low: 0.01, high: 0.04, drives: false });
const chances = [chance("From fouled launches"), chance("Ours")];

describe("the line of the break-even chance on the ruler", () => {
  it("is one line where it meets no text", () => {
    const { turn, axisY } = chanceRuler(chances, 0.03);
    expect(turn?.pieces).toEqual([{ from: 4, to: axisY }]);
  });

  it("leaves out the name of a row that reaches it, and no more", () => {
    // Names begin at 8 of 420; the chance of 0.3 % stands at some 85, past "Ours" and within the other name.
    const { turn, rows, axisY } = chanceRuler(chances, 0.003);
    expect(turn?.x).toBeCloseTo(8 + (400 * Math.log(3)) / Math.log(300), 6);
    const [first, last] = turn?.pieces ?? [];
    expect(turn?.pieces).toHaveLength(2);
    expect(first?.to).toBeLessThan((rows[0]?.textY ?? 0) - 8);
    expect(last?.from).toBeGreaterThan(rows[0]?.textY ?? Number.POSITIVE_INFINITY);
    expect(last?.from).toBeLessThan(rows[0]?.y ?? 0);
    expect(last?.to).toBe(axisY);
  });

  it("leaves out the figures at the right", () => {
    expect(chanceRuler(chances, 0.25).turn?.pieces).toHaveLength(3);
  });
});
