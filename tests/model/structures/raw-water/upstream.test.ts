import { describe, expect, it } from "vitest";
import { sumOf } from "../../../../src/lists.js";
import { layerIn } from "../../../../src/model/structures/plans/course-months.js";
import { matureCourse } from "../../../../src/model/structures/plans/untouched.js";
import { fittingWords } from "../../../../src/model/structures/raw-water/fitting-words.js";
import { withShare } from "../../../../src/model/structures/raw-water/loading.js";
import { pieceParameters } from "../../../../src/model/structures/raw-water/pieces.js";
import { upstreamPieces } from "../../../../src/model/structures/raw-water/upstream.js";
import { assumed, assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { everyMonth } from "../../near.js";

const surface = { place: { at: "elevation", elevation: 88 }, velocity: everyMonth(0) } as const;

function drawnFrom({ requiredFlow, largest }: { requiredFlow: number; largest: number }) {
  const source = assumedWith({ "conduit.largest-layer": largest });
  const context = contextOf(productiveLake, 12, source);
  const parameters = pieceParameters(source);
  const pieces = upstreamPieces({ surface, area: 300, flow: 2 }, requiredFlow, parameters, context);
  const { course, from } = matureCourse(context.growing(surface), context);
  const mature = Array.from({ length: course.months - from }, (_, month) => layerIn(course, from + month));
  return { pieces, mature, carried: parameters.carriedShare };
}

describe("pieces from a wall upstream", () => {
  it("are a line's share of what the wall sheds in a mean mature year", () => {
    const { pieces, mature, carried } = drawnFrom({ requiredFlow: 0.5, largest: 1000 });
    // By hand: 0.5 of 2 m³/s draw a quarter; the mature years are seven.
    const shed = sumOf(mature.map((layer) => layer.shed)) / 7;
    expect(sumOf(pieces.map(({ mass }) => mass)) / (carried * shed * 300 * 0.25)).toBeCloseTo(1, 12);
  });

  it("are no more than all of them", () => {
    const [all, more] = [2, 9].map((requiredFlow) => drawnFrom({ requiredFlow, largest: 1000 }).pieces);
    expect(more).toEqual(all);
  });

  it("are those of a layer as thick as its upkeep lets it grow", () => {
    const { pieces, mature, carried } = drawnFrom({ requiredFlow: 2, largest: 0.001 });
    const kept = sumOf(mature.map((layer) => layer.shed * Math.min(1, 0.001 / layer.thickness))) / 7;
    expect(sumOf(pieces.map(({ mass }) => mass)) / (carried * kept * 300)).toBeCloseTo(1, 12);
    expect(mature.every(({ thickness }) => thickness > 0.001)).toBe(true);
  });
});

describe("the size of pieces from a wall upstream", () => {
  it.each([0.02, 1000])(
    "is the mean of a month over the mature years, by mass, at %d m at most",
    (largest) => {
      const { pieces, mature } = drawnFrom({ requiredFlow: 2, largest });
      const march = mature.filter((_, month) => month % 12 === 2);
      // By hand: thinner layers keep all that they shed, thicker ones as much as the largest would.
      const shedBy = march.map(({ shed, thickness }) => shed * Math.min(1, largest / thickness));
      const sizes = march.map(({ lengthMm, thickness }) =>
        Math.max(lengthMm / 1000, Math.min(largest, thickness)),
      );
      const sized = sumOf(shedBy.map((shed, year) => shed * (sizes[year] ?? Number.NaN)));
      expect(new Set(sizes).size).toBeGreaterThan(1);
      expect(pieces[2]?.size).toBeCloseTo(sized / sumOf(shedBy), 12);
    },
  );

  it("is nothing where nothing is shed", () => {
    const dry = { place: { at: "elevation", elevation: 120 }, velocity: everyMonth(0) } as const;
    const wall = { surface: dry, area: 300, flow: 2 };
    const pieces = upstreamPieces(wall, 1, pieceParameters(assumed), contextOf(productiveLake, 12));
    expect(pieces.map(({ mass, size }) => [mass, size])).toEqual(everyMonth(0).map(() => [0, 0]));
  });
});

describe("arrivals with a share of others", () => {
  it("are added kind by kind", () => {
    expect(withShare([1, 0.1, 0.2, 3], 0.25, [4, 0.4, 0.8, 8])).toEqual([2, 0.2, 0.4, 5]);
  });
});

describe("the words of what a line carries", () => {
  it("are none of a line without any of it, named or not", () => {
    expect([...fittingWords({}), ...fittingWords({}, "cooling water")]).toEqual([]);
  });

  it("tell what it serves, its strainer, its coolers and its orifices, after its name", () => {
    const line = {
      serves: "bearings",
      strainer: { mesh: 0.003, screenArea: 0.2, type: "duplex" },
      coolers: [{ name: "oil coolers", count: 2, tubes: 40, bore: 0.014, passes: 1 }],
      orifices: [
        { name: "seals", count: 3, bore: 0.004 },
        { name: "meters", count: 1, bore: 0.01 },
      ],
    } as const;
    const text = (words: ReturnType<typeof fittingWords>) =>
      words.map((word) => (typeof word === "string" ? word : `${word.value}`)).join("");
    const told =
      " for bearings, duplex strainer of 0.003 mesh, oil coolers: 2 × 40 tubes of 0.014 in 1 pass, 4 orifices";
    expect(text(fittingWords(line))).toBe(told);
    expect(text(fittingWords(line, "cooling water"))).toBe(`; cooling water${told}`);
    expect(text(fittingWords({ serves: "seals" }, "service water"))).toBe("; service water for seals");
  });
});
