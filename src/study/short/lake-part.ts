import { rangeOf } from "./amount-text.js";
import { airOf, deepIn, peakAt, surfaceEnds, surfaceIn } from "./climate.js";
import type { ShortFacts } from "./facts-schema.js";
import { type Filling, rangeOr, type TypicalId } from "./filling.js";
import { byMonth } from "./season.js";
import type { Site } from "./site.js";
import { TypicalValue } from "./typical-value.js";
import { turns } from "./year-of-levels.js";

/** The lake of the full study. */
export function lakePart(facts: ShortFacts, site: Site, filling: Filling): object {
  const { single, typical } = filling;
  const depth = rangeOr(facts.depth, typical("typical.lake-depth")).value;
  const isDeep = depth >= typical("typical.deep-from").value;
  return {
    name: facts.name ?? "The lake",
    species: "quagga",
    ...(facts.infestedSince === undefined ? {} : { infestedSince: facts.infestedSince }),
    depthType: facts.depth
      ? isDeep
        ? "deep"
        : "shallow"
      : new TypicalValue("typical.lake-depth", "shallow"),
    maximumElevation: single("typical.level-margin", "elevation", (margin) => site.highest + margin),
    minimumElevation: single("typical.level-margin", "elevation", () => site.minimum),
    storageTable: storageTable(facts, site, filling),
    drawdown: drawdown(facts, site, filling),
    ...temperatures(facts, site, filling),
    chemistry: { calcium: facts.calcium?.text ?? filling.ranged(calciumEntry(facts), "concentration") },
  };
}

const calciumEntries = {
  soft: "typical.calcium-soft",
  moderate: "typical.calcium-moderate",
  hard: "typical.calcium-hard",
  "very-hard": "typical.calcium-very-hard",
} as const satisfies Record<NonNullable<ShortFacts["hardness"]>, TypicalId>;

/** The entry of a water's calcium, by how hard it is said to be. */
export const calciumEntry = ({ hardness }: Pick<ShortFacts, "hardness">): TypicalId =>
  hardness ? calciumEntries[hardness] : "typical.calcium-unknown";

/** Depths at which the table has rows, as shares of the greatest depth. */
const tableRows = [0, 0.25, 0.5, 0.75, 1];

/** A basin whose area grows with a power of the depth. */
function storageTable(facts: ShortFacts, site: Site, { text, typical }: Filling): unknown[] {
  const top = site.highest + typical("typical.level-margin").value;
  const area = rangeOr(facts.area, typical("typical.lake-area")).value;
  const deepest = top - site.bottom;
  const { value: power } = typical("typical.basin-shape");
  return tableRows.map((share) => {
    const row = {
      elevation: text(point(site.bottom + share * deepest), "elevation"),
      area: text(point(area * share ** power), "landArea"),
      storage: text(point((area * deepest * share ** (power + 1)) / (power + 1)), "volume"),
    };
    return Object.fromEntries(
      Object.entries(row).map(([key, written]) => [key, new TypicalValue("typical.basin-shape", written)]),
    );
  });
}

const point = (value: number) => ({ low: value, value, high: value });

function drawdown(facts: ShortFacts, { levels }: Site, { amount, text }: Filling): unknown[] {
  const summer = facts.summerLevel?.text ?? amount("typical.elevation", point(levels.summer), "elevation");
  const winter =
    facts.winterLevel?.text ??
    (facts.winterLevel
      ? text(levels.winter, "elevation")
      : amount("typical.drawdown", levels.winter, "elevation"));
  const elevations = { summer, winter };
  return turns.map(({ on, at }) => ({ on, elevation: elevations[at] }));
}

function temperatures(facts: ShortFacts, site: Site, filling: Filling): object {
  const { amount, typical, ranged } = filling;
  const { where } = site;
  const entered = facts.warmestMonth && rangeOf(facts.warmestMonth);
  const ends = surfaceEnds(where, entered, filling);
  const air = airOf(where, filling);
  const peakOf = (id: TypicalId) => peakAt(where, typical(id).value);
  const warming = entered ? "typical.water-peak" : "typical.water-above-air";
  const surface = peakOf("typical.water-peak");
  const deep = peakOf("typical.deep-peak");
  const share = typical("typical.deep-share");
  return {
    surfaceTemperature: byMonth((month) => amount(warming, surfaceIn(ends, month, surface), "temperature")),
    deepTemperature: byMonth((month) =>
      amount("typical.deep-share", deepIn(ends, month, deep, share), "temperature"),
    ),
    thermoclineDepth: ranged("typical.thermocline", "length"),
    airTemperature: byMonth((month) => amount("typical.air-mean", air(month), "temperature")),
    humidity: byMonth(() => ranged("typical.humidity", "share")),
  };
}
