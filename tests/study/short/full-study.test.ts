import { describe, expect, it } from "vitest";
import { unusualEntries } from "../../../src/report/document/check-rows.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { valueAt } from "../../../src/study/reading/problems.js";
import { typicalPlacesIn } from "../../../src/study/short/typical-places.js";
import { realSet } from "../../assumptions/real.js";
import { plainStudy, shortExample, studyFrom } from "./facts.js";

const at = (study: unknown, ...path: (string | number)[]) => valueAt(study, path);
/** The middle of a range as it is written: "0.5 to 1 to 2 m". */
const middleOf = (text: unknown) => Number(String(text).split(" to ")[1]);

describe("an intake of a short study", () => {
  const study = plainStudy({ units: "si", intakes: [{ use: "industry", flow: "1 m3/s", depth: "6 m" }] });
  const intake = (...path: (string | number)[]) => at(study, "structures", 0, ...path);

  it("has a rack for its largest flow: by hand, 1 m³/s at 0.25 m/s want 4 m², 2 m by 2 m", () => {
    expect(middleOf(intake("rack", "width"))).toBe(2);
    expect(intake("rack", "height")).toBe("2 m");
    // 0.12 and 0.4 m/s: 1/(2·0.4) = 1.25 m and 1/(2·0.12) = 4.17 m
    expect(intake("rack", "width")).toBe("1.25 to 2 to 4.17 m");
  });

  it("has a pipe for that flow: by hand, at 1.3 m/s √(4/(π·1.3)) = 0.99 m", () => {
    expect(middleOf(intake("conduit", "diameter"))).toBe(990);
  });

  it("lies where its author says, and takes its largest flow in its largest month", () => {
    // 500 m is the typical level in summer
    expect(intake("elevation")).toBe("494 m");
    expect(intake("demand", "jul")).toBe("1 m3/s");
  });

  it("keeps the pipe that its author knows, and his range of the flow", () => {
    const known = plainStudy({ units: "si", intakes: [{ flow: "0.5 to 1 m3/s", pipe: 700 }] });
    expect(at(known, "structures", 0, "conduit", "diameter")).toBe("700 mm");
    expect(at(known, "structures", 0, "demand", "jul")).toBe("0.5 to 0.75 to 1 m3/s");
  });

  it("takes what its pipe is built for, where its author knows that alone: by hand, 1.3·π/4·1² = 1.02 m³/s", () => {
    const piped = plainStudy({ units: "si", intakes: [{ use: "town", pipe: "1000 mm" }] });
    expect(middleOf(at(piped, "structures", 0, "demand", "jul"))).toBe(1.02);
  });

  it("for a small flow has a strainer of three openings at least, and a pipe of 50 mm", () => {
    const { study: read } = studyFrom({ units: "si", intakes: [{ use: "town", flow: "5 gpm" }] });
    const part = (...path: string[]) => Number(at(read, "structures", 0, ...path, "value"));
    expect(part("rack", "width")).toBeGreaterThanOrEqual(3 * part("rack", "clearSpacing"));
    // At 1.3 m/s a bore of 18 mm would do.
    expect(part("conduit", "diameter")).toBe(0.05);
  });

  it.each(["5 gpm", "50 gpm", "1 cfs", "5000 cfs"])(
    "for %s has nothing that is unusual of its own",
    (flow) => {
      const { study: read } = studyFrom({ intakes: [{ use: "town", flow }] });
      expect(unusualEntries(comparedRun(read, realSet()))).toEqual([]);
    },
  );

  it("lies in water where its author knows how deep, and not how deep the lake is", () => {
    // A typical lake is 25 m deep.
    const { study: read } = studyFrom({ units: "si", intakes: [{ use: "town", depth: "45 m" }] });
    expect(at(read, "lake", "storageTable", 0, "elevation", "value")).toBeLessThan(500 - 45);
  });

  it("for irrigation rests in winter, runs by gravity and takes no oxidant", () => {
    const irrigated = plainStudy({ units: "si", intakes: [{ use: "irrigation", flow: "2 m3/s" }] });
    expect(at(irrigated, "structures", 0, "demand", "jan")).toBe("0 m3/s");
    expect(at(irrigated, "structures", 0, "supply", "by")).toBe("gravity");
    expect(at(irrigated, "structures", 0, "oxidantAllowed")).toBe(false);
  });
});

describe("the water over an intake of a short study", () => {
  const demand = (study: unknown) => Object.entries(Object(at(study, "structures", 0, "demand")));

  it("is there whenever it takes any: one for irrigation rests while the lake is under it", () => {
    const levels = { units: "us", summerLevel: "2,136 ft", winterLevel: "2,100 ft" };
    const study = plainStudy({
      ...levels,
      intakes: [{ use: "irrigation", flow: "150 cfs", depth: "27 ft" }],
    });
    // By hand: it lies at 2,109 ft. From February 15 the lake rises 36 ft in 115 days, and is there on March 15; from
    // September 15 it falls 36 ft in 86 days, and leaves it on November 18.
    const taking = demand(study).filter(([, flow]) => flow !== "0 cfs");
    expect(taking.map(([month]) => month)).toEqual(["apr", "may", "jun", "jul", "aug", "sep", "oct"]);
  });

  it("is not taken away by a typical drawdown, where the author knows a depth alone", () => {
    // A typical lake falls by 2 m and up to 8; a typical cover is 1.2 m.
    const lowest = (intake: object) =>
      String(at(plainStudy({ units: "si", intakes: [intake] }), "lake", "drawdown", 0, "elevation"));
    expect(lowest({ use: "town", depth: "1.7 m" })).toBe("499.5 to 499.5 to 500 m");
    expect(lowest({ use: "town", depth: "30 m" })).toBe(lowest({}));
    expect(lowest({ use: "irrigation", depth: "1.7 m" })).toBe(lowest({}));
  });
});

describe("what a lake office may know of its works", () => {
  const intakes = [
    { use: "town", length: 900, tastes: "yes" },
    { use: "town", tastes: "no" },
  ];
  const wanted = { gated: "yes" };
  const study = plainStudy({ units: "si", intakes, wanted, inForce: {}, infestedSince: "2024" });

  it("is the length of its pipe, and whether its water is treated against tastes", () => {
    expect(at(study, "structures", 0, "conduit", "length")).toBe("900 m");
    expect(at(study, "structures", 2)).toMatchObject({ kind: "treatment-plant", intake: "intake-1" });
    expect(at(study, "structures", 2, "treated")).toEqual(at(study, "structures", 0, "demand"));
    expect(at(study, "structures", 3, "kind")).toBe("dock");
  });

  it("is that ramps are locked, so that nearly all boats are met, no surer than 98 % typed by an author", () => {
    // By hand: odds of 49 to 1, over and times e^0.8 (`typed.effect`), are shares of 95.65 and 99.09 %, rounded outward.
    expect(at(study, "options", 2, "steps", "coverage")).toBe("95.6 to 98 to 99.1 %");
    expect(middleOf(at(study, "options", 1, "steps", "coverage"))).toBeLessThan(65);
  });

  it("is that mussels are there", () => {
    expect(at(study, "lake", "infestedSince")).toBe(2024);
  });
});

describe("a plant of a short study", () => {
  const plant = { power: "20 MW", head: "50 m", units: 2 };
  const study = plainStudy({ units: "si", summerLevel: "500 m", winterLevel: "496 m", plant });
  const at0 = (...path: (string | number)[]) => at(study, "structures", 0, ...path);

  it("has a flow from its power and head: by hand, 10 MW/(9.81·50·0.88) = 23.2 m³/s, of which 0.45 on average", () => {
    const months = ["mar", "sep"].map((month) => middleOf(at0("flow", month)));
    // A quarter year from the peak, the middle of June or so, a unit has its mean: 10.4 m³/s
    expect(months[0]).toBeGreaterThan(9.5);
    expect(months[1]).toBeLessThan(11.5);
    const { length } = Object.keys(Object(at0("flow")));
    const mean = Object.values(Object(at0("flow"))).reduce<number>((sum, each) => sum + middleOf(each), 0);
    expect(mean / length).toBeCloseTo(23.2 * 0.45, 0);
  });

  it("has cooling water by its power: 10 MW of a unit at 0.0007 m³/s each", () => {
    expect(middleOf(at0("coolingWater", "requiredFlow"))).toBe(0.007);
  });

  it("has its tailwater a head below the lake in summer, and its intake under the lowest lake", () => {
    expect(at0("tailwaterElevation")).toBe("450 m");
    // 4 m under 496 m less the band of 0.3 m
    expect(at0("elevation")).toBe("491.7 m");
  });
});

describe("the climate of a short study", () => {
  it("is that of its latitude and height: by hand, 14 + 12.5·cos(2π·0.1/12) = 26.5 °C at 40° by the sea in July", () => {
    const study = plainStudy({ units: "si", place: "40", summerLevel: "0 m" });
    expect(middleOf(at(study, "lake", "airTemperature", "jul"))).toBe(26.5);
  });

  it("cools by 0.85 °C a degree and 4 °C a kilometre", () => {
    const study = plainStudy({ units: "si", place: "44", summerLevel: "1000 m" });
    // Mean 14 − 3.4 − 4 = 6.6 °C, half swing 12.5 + 0.5·4 = 14.5 °C
    expect(middleOf(at(study, "lake", "airTemperature", "jul"))).toBeCloseTo(6.6 + 14.5, 0);
    expect(middleOf(at(study, "lake", "airTemperature", "jan"))).toBeCloseTo(6.6 - 14.5, 0);
  });

  it("has its summer in January south of the equator", () => {
    const study = plainStudy({ units: "si", place: "40 S", summerLevel: "0 m" });
    expect(middleOf(at(study, "lake", "airTemperature", "jan"))).toBe(26.5);
  });

  it("gives the warmest month of the surface what its author says", () => {
    const study = plainStudy({ units: "si", warmestMonth: "22 degC" });
    const warmest = ["jul", "aug"].map((month) =>
      Number.parseFloat(String(at(study, "lake", "surfaceTemperature", month))),
    );
    expect(Math.max(...warmest)).toBeGreaterThan(21);
    expect(Math.max(...warmest)).toBeLessThanOrEqual(22);
  });
});

describe("boats and programs of a short study", () => {
  const study = plainStudy({ launches: "10,000", fromAway: "40 %", nearestInfested: "3 d", wanted: {} });

  it("spread launches over the season, the most in July, and lose none", () => {
    const months = Object.values(Object(at(study, "boats", "launches"))).map(Number);
    expect(months.reduce((sum, each) => sum + each, 0)).toBeCloseTo(10_000, -2);
    expect(Math.max(...months)).toBe(at(study, "boats", "launches", "jul"));
  });

  it("have classes whose shares follow from who was elsewhere: 3 % of 40 % were on infested water far away", () => {
    const shares = [0, 1, 2].map((index) => at(study, "boats", "classes", index, "share"));
    expect(shares).toEqual(["60 %", "38.8 %", "1.2 %"]);
  });

  it("cost wages by hours, May to September: by hand, 153 d · 10 h · 1.5 people · 28 $/h = 64,260 $", () => {
    expect(middleOf(at(study, "options", 1, "yearly", 0, "cost"))).toBe(64_300);
    // Other costs 0.45 of these: 28,917
    expect(middleOf(at(study, "options", 1, "yearly", 1, "cost"))).toBe(28_900);
  });

  it("cost what their author says, more or less: 0.85 to 1.2 of a round figure, a range as it is", () => {
    const cost = (given: string) =>
      at(plainStudy({ wanted: { cost: given } }), "options", 1, "yearly", 0, "cost");
    expect(cost("100,000")).toBe("85000 to 100000 to 120000 $/yr");
    expect(cost("$90,000/yr to $110,000/yr")).toBe("$90,000/yr to $110,000/yr");
  });
});

describe("the typical values of a short study", () => {
  it("are listed with their places, all of which are there", () => {
    const { study } = studyFrom(shortExample("sorrel-bend"));
    const listed = study.study.typical ?? {};
    expect(typicalPlacesIn(study, listed)).toHaveLength(Object.keys(listed).length);
    expect(listed["structures/intake-1/rack/barThickness"]).toBe("typical.bar-thickness");
    expect(listed["lake/airTemperature"]).toBe("typical.air-mean");
  });

  it("are none of those that the author gave", () => {
    const listed = Object.keys(studyFrom(shortExample("sorrel-bend")).study.study.typical ?? {});
    for (const own of [
      "structures/intake-1/conduit/diameter",
      "structures/intake-1/elevation",
      "money/horizon",
    ]) {
      expect(listed).not.toContain(own);
    }
  });

  it("are in the study's currency: 0.5 $/m³ at 0.9 € a dollar are 0.45 €/m³", () => {
    const study = plainStudy({ units: "si", currency: "EUR", exchangeRate: 0.9, intakes: [{}] });
    expect(at(study, "structures", 0, "alternativeWater")).toBe("0.135 to 0.45 to 1.35 EUR/m3");
  });
});
