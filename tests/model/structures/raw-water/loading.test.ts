import { describe, expect, it } from "vitest";
import { shellParameters } from "../../../../src/model/mussels/shell.js";
import { hasFittings } from "../../../../src/model/structures/raw-water/fittings.js";
import { arrivalsOf, leftOf, loadingOf } from "../../../../src/model/structures/raw-water/loading.js";
import {
  heldBy,
  lodgingPieces,
  openingOf,
  piecesOf,
} from "../../../../src/model/structures/raw-water/pieces.js";
import { assumed } from "../../assumptions.js";

const pieceParameters = { spread: 2, width: 0.5, carriedShare: 0.5 };
const parameters = { pieces: pieceParameters, blindedShare: 0.5, spareTubes: 0.1, mostCleanings: 4 };
const coolers = [
  { name: "air coolers", count: 2, tubes: 100, bore: 0.02, passes: 2 },
  { name: "oil coolers", count: 3, tubes: 40, bore: 0.01, passes: 1 },
];
const orifices = [
  { name: "seals", count: 2, bore: 0.004 },
  { name: "meters", count: 5, bore: 0.006 },
];
const strainer = { mesh: 0.003, screenArea: 0.3, type: "duplex" } as const;

describe("what a month's pieces do to the fittings of a line", () => {
  // The strainer is blinded 1.5 times; 0.2 and 0.05 of the first passes are plugged; orifices are blocked 3 and 10 times.
  const load = loadingOf({ coolers, orifices }, parameters)([1.5, 0.2, 0.05, 3, 10]);

  it("is work on all coolers, and on the one that is cleaned most often, by hand", () => {
    expect(load.swaps).toBe(1.5);
    // Twice, and half a time: 2 × 2 + 3 × 0.5.
    expect(load.cleanings).toBeCloseTo(5.5, 12);
    expect(load.cleaningsOfOne).toBeCloseTo(2, 12);
  });

  it("is work on all orifices, at most four times each, by hand", () => {
    // 2 × 3 + 5 × 4, of which those that are blocked 10 times are 2.5 times the most.
    expect(load.clearings).toBeCloseTo(26, 12);
    expect(load.clearingsOfOne).toBe(4);
    expect(load.blocked).toBeCloseTo(2.5, 12);
  });

  it("leaves water and tubes by the bundles, by hand", () => {
    // Plugged to the spare 0.1 of the one and to 0.05 of the other: first passes of 100 tubes of 20 mm and 120 of 10 mm,
    // areas as 40 to 12, and 200 tubes in two passes beside 120 in one.
    expect(load.left.water).toBeCloseTo((40 * 0.9 + 12 * 0.95) / 52, 12);
    expect(load.left.tubes).toBeCloseTo((200 * 0.95 + 120 * 0.95) / 320, 12);
    const { tubes } = leftOf(coolers)([0.5, 0]);
    expect(tubes).toBeCloseTo((200 * 0.75 + 120) / 320, 12);
  });

  it("is counted anew each month, with what comes from upstream", () => {
    const loading = loadingOf({ coolers, orifices }, parameters);
    loading([1.5, 0.2, 0.05, 3, 10]);
    const later = loading([0.5, 0.02, 0, 0.5, 1], 0.5, [1, 0.04, 0.2, 1, 2]);
    // 0.04 and 0.1 are plugged: 2 × 0.4 + 3 × 1; orifices are blocked once and twice: 2 × 1 + 5 × 2.
    expect(later.swaps).toBe(1);
    expect(later.cleanings).toBeCloseTo(3.8, 12);
    expect(later.cleaningsOfOne).toBeCloseTo(1, 12);
    expect(later.clearings).toBeCloseTo(12, 12);
    expect(later.blocked).toBeCloseTo(0.5, 12);
  });
});

describe("what arrives at the fittings of a line", () => {
  const shell = shellParameters(assumed);
  const pieces = piecesOf(2, 0.02, pieceParameters);
  const growth = { bulkDensity: 500, shell } as Parameters<typeof arrivalsOf>[2];

  it("is shared by coolers by their open area, and by orifices alike, by hand", () => {
    const arrived = arrivalsOf(
      { coolers, orifices, strainer: { ...strainer, mesh: 0.012 } },
      parameters,
      growth,
    )(pieces);
    const lodged = (bore: number) =>
      lodgingPieces(
        pieces,
        { bore: openingOf(bore, pieceParameters), held: heldBy(0.012, pieceParameters) },
        shell,
      );
    // 24 mm are held: 2 kg × exp(−1.44) at 500 kg/m³ and 20 mm, on half of 0.3 m².
    const blinded = (2 * Math.exp(-1.44)) / (500 * 0.02) / 0.15;
    const byHand = [
      blinded,
      (lodged(0.02) * 40) / 52 / 100,
      (lodged(0.01) * 12) / 52 / 120,
      lodged(0.004) / 7,
      lodged(0.006) / 7,
    ];
    expect(arrived).toHaveLength(byHand.length);
    for (const [kind, each] of byHand.entries()) expect(arrived[kind]).toBeCloseTo(each, 12);
  });
});

describe("a line that carries nothing", () => {
  it("has neither coolers nor orifices nor a strainer", () => {
    expect(hasFittings({})).toBe(false);
    expect(hasFittings({ coolers: [], orifices: [] })).toBe(false);
    expect([{ coolers }, { orifices }, { strainer }].map(hasFittings)).toEqual([true, true, true]);
  });
});
