import { describe, expect, it } from "vitest";
import { habitatDoubt } from "../../../src/model/lake/habitat-doubt.js";
import type { Chemistry, Lake } from "../../../src/model/lake/lake.js";
import { suitability } from "../../../src/model/lake/suitability.js";
import { assumed, assumedWith } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";

const cool = everyMonth(20);
const doubted = (chemistry: Chemistry, changes: Partial<Lake> = {}) =>
  habitatDoubt(
    { ...productiveLake, surfaceTemperature: cool, deepTemperature: cool, chemistry, ...changes },
    assumed,
  );
const nearOf = (chemistry: Chemistry, changes?: Partial<Lake>) =>
  doubted(chemistry, changes).nearEdges.map(({ variable, other }) => [variable.key, other.class]);

describe("the measuring error of a variable", () => {
  // By hand, with errors of 10 % for calcium, alkalinity and hardness, 5 % for conductivity, 0.2 of pH, 0.5 mg/L of oxygen
  // and half a kelvin (judged), from the classes that tests of suitability cite.
  it.each([
    [{ calcium: 19 }, [["calcium", "moderate"]]],
    [{ calcium: 21 }, [["calcium", "low"]]],
    [{ calcium: 24 }, []],
    [{ calcium: 60, ph: 7.5 }, [["ph", "moderate"]]],
    [{ calcium: 60, ph: 8 }, []],
    [{ calcium: 60, alkalinity: 53 }, [["alkalinity", "moderate"]]],
    [{ calcium: 60, hardness: 105 }, [["hardness", "moderate"]]],
    [{ calcium: 60, oxygen: 5.6 }, [["oxygen", "moderate"]]],
    [{ calcium: 60, conductivity: 106 }, [["conductivity", "high"]]],
    [{ calcium: 60, conductivity: 103 }, []],
    [{ calcium: 60, salinity: 3.9 }, [["salinity", "low"]]],
  ])("of %j reaches the class beside it, or not: %j", (chemistry, near) => {
    expect(nearOf(chemistry)).toEqual(near);
  });

  it("tells the class of the lower value where both sides reach another", () => {
    const wide = assumedWith({ "suitability.error.ph": 1.4 });
    const classAt = (ph: number) =>
      suitability({ ...productiveLake, chemistry: { calcium: 60, ph } }, wide).variables.find(
        ({ key }) => key === "ph",
      )?.class;
    const classes = [6.6, 8, 9.4].map(classAt);
    expect(new Set(classes).size).toBe(3);
    const { nearEdges } = habitatDoubt({ ...productiveLake, chemistry: { calcium: 60, ph: 8 } }, wide);
    expect(nearEdges.find(({ variable }) => variable.key === "ph")?.other.class).toBe(classes[0]);
  });

  it("of temperature moves all months and both depths", () => {
    const warm = everyMonth(26.7);
    expect(nearOf({ calcium: 60 }, { surfaceTemperature: warm, deepTemperature: warm })).toEqual([
      ["temperature", "low"],
    ]);
    // Water that stays cool below a warm surface is as good half a kelvin warmer.
    expect(nearOf({ calcium: 60 }, { surfaceTemperature: warm, deepTemperature: everyMonth(14) })).toEqual(
      [],
    );
  });
});

describe("a variable that decides alone", () => {
  it("is one whose weight is below that of every other, which is told", () => {
    expect(doubted({ calcium: 15 }).weightOtherwise).toBe(assumed("suitability.weight.high"));
    expect(doubted({ calcium: 15, ph: 7.2 }).weightOtherwise).toBe(assumed("suitability.weight.moderate"));
  });

  it("is none where two have the lowest weight, or all are as good", () => {
    expect(doubted({ calcium: 15, alkalinity: 40 }).weightOtherwise).toBeUndefined();
    expect(doubted({ calcium: 60, ph: 8 }).weightOtherwise).toBeUndefined();
  });
});
