import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { firstStudy } from "../../../src/editor/first-study.js";
import { asWritten } from "../../../src/study/format/as-written.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { shortFactsOf } from "../../../src/study/short/read-facts.js";
import { typicalPlacesIn } from "../../../src/study/short/typical-places.js";
import { type TypedId, typedIdOf } from "../../../src/study/typed/typed-kinds.js";
import { typedRange } from "../../../src/study/typed/typed-range.js";
import type { SpreadQuantity } from "../../../src/units/spread.js";
import { assumptions } from "../../report/runs.js";
import { exampleNames } from "../example.js";
import { shortExample } from "../short/facts.js";

interface TypicalRange {
  /** Id of the assumption that it comes from. */
  readonly entry: string;
  readonly id: TypedId;
  readonly quantity: SpreadQuantity;
  readonly low: number;
  readonly high: number;
}

const isQuantity = (value: object): value is SpreadQuantity => "text" in value && "dimension" in value;

/** Quantities with a range in a part of a study. */
function ranged(
  value: unknown,
  path: readonly PropertyKey[],
): (readonly [readonly PropertyKey[], SpreadQuantity])[] {
  if (typeof value !== "object" || value === null) return [];
  if (isQuantity(value)) return value.spread ? [[path, value]] : [];
  return Object.entries(value).flatMap(([key, each]: [string, unknown]) =>
    ranged(each, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

/** What a first estimate fills in with a range, where an author's own single number would be varied too. */
function typicalRanges(text: string): TypicalRange[] {
  const { entries } = assumptions;
  const study = readStudyText(
    firstStudy(shortFactsOf(text, "short", entries), entries, "2026-01-01"),
    "full",
  );
  const document: unknown = asWritten(study);
  return typicalPlacesIn(document, study.study.typical).flatMap(({ entry, path }) => {
    const whole = path.reduce<unknown>((value, key) => Reflect.get(Object(value), key), document);
    return ranged(whole, path).flatMap(([at, quantity]) => {
      const id = typedIdOf(at, quantity.dimension);
      const { spread } = quantity;
      if (!id || !spread || spread.kind === "discrete") return [];
      return [{ entry, id, quantity, low: spread.low, high: spread.high }];
    });
  });
}

const examples = exampleNames.map(shortExample);

/** Facts of an example with a quarter of those left out that may be: typical values take their place. */
const fewerFacts = fc
  .tuple(fc.constantFrom(...examples), fc.array(fc.nat(3), { minLength: 60, maxLength: 60 }))
  .map(([facts, draws]) => stringify(withLess(facts, draws[Symbol.iterator]())));

const needed = ["name", "units", "currency", "summerLevel", "use"];

function withLess(tree: unknown, draws: Iterator<number>): unknown {
  if (Array.isArray(tree)) return tree.map((each) => withLess(each, draws));
  if (typeof tree !== "object" || tree === null) return tree;
  const kept = Object.entries(tree).filter(([key]) => needed.includes(key) || draws.next().value !== 0);
  return Object.fromEntries(kept.map(([key, value]: [string, unknown]) => [key, withLess(value, draws)]));
}

/** From no source: whoever knows less may not be told to be surer. */
const narrowerIn = (places: readonly TypicalRange[]) =>
  places
    .filter(({ id, quantity, low, high }) => {
      const { value, dimension } = quantity;
      const own = typedRange({ id, value, dimension }, assumptions);
      return own && high - low < (own.high - own.low) * (1 - 1e-9);
    })
    .map(({ entry, quantity }) => `${entry}: ${quantity.text}`);

describe("a typical value in place of the author's own", () => {
  it("is there in many places of the first estimates, and never narrows what is varied", () => {
    const places = examples.flatMap((facts) => typicalRanges(stringify(facts)));
    expect(places.length).toBeGreaterThan(100);
    expect(narrowerIn(places)).toEqual([]);
  });

  it("never narrows it, whatever else is left out", () => {
    fc.assert(
      fc.property(fewerFacts, (text) => {
        const places = typicalRanges(text);
        expect(places.length).toBeGreaterThan(0);
        expect(narrowerIn(places)).toEqual([]);
      }),
      { seed: 2911, numRuns: 12 },
    );
  });
});
