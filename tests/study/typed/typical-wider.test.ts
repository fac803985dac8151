import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { firstStudy } from "../../../src/editor/first-study.js";
import { examplesFolder } from "../../../src/report/document/assets.js";
import { asWritten } from "../../../src/study/format/as-written.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { shortFactsOf } from "../../../src/study/short/read-facts.js";
import { typicalPlacesIn } from "../../../src/study/short/typical-places.js";
import { type TypedId, typedIdOf } from "../../../src/study/typed/typed-kinds.js";
import { typedRange } from "../../../src/study/typed/typed-range.js";
import type { SpreadQuantity } from "../../../src/units/spread.js";
import { assumptions } from "../../report/runs.js";

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
function typicalRanges(name: string): TypicalRange[] {
  const text = readFileSync(join(examplesFolder, "short", `${name}.short.yaml`), "utf8");
  const { entries } = assumptions;
  const study = readStudyText(firstStudy(shortFactsOf(text, name, entries), entries, "2026-01-01"), name);
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

const names = ["sorrel-bend", "ninemoss", "copperhithe", "thistledown"];
const places = names.flatMap(typicalRanges);

describe("a typical value in place of the author's own", () => {
  it("is there in many places of the first estimates", () => {
    expect(places.length).toBeGreaterThan(100);
  });

  it("never narrows what is varied", () => {
    // From no source: whoever knows less may not be told to be surer.
    const narrower = places.filter(({ id, quantity, low, high }) => {
      const { value, dimension } = quantity;
      const own = typedRange({ id, value, dimension }, assumptions);
      return own && high - low < (own.high - own.low) * (1 - 1e-9);
    });
    expect(narrower.map(({ entry, quantity }) => `${entry}: ${quantity.text}`)).toEqual([]);
  });
});
