import type { AssumptionSet } from "../../assumptions/entry.js";
import { isPrice } from "../../assumptions/entry-marks.js";
import { converted, exchanged, type PriceFactor } from "../../assumptions/prices.js";
import { continuedBy, type PriceIndex, yearsText } from "../../model/money/price-index.js";
import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";

/** Assumption prices adjusted to a study. */
export interface StudyPrices {
  readonly factorOf: PriceFactor;
  /** Index for conversion to the study's price year; absent if prices are used unchanged. */
  readonly index: PriceIndex | undefined;
  /** Index that prices of works follow; absent if prices are used unchanged. */
  readonly works: PriceIndex | undefined;
  /** The year whose index stands for a price year that has none yet. */
  readonly latestIndex?: number;
}

type MoneyDocument = StudyDocument["money"];

/** Indices for the assumption files, whose prices are in US dollars. */
const indexId = "cpi-u";
const worksId = "plant-cost";

const remedy =
  "Choose another price year, add the missing year to money.indexValues with its source, or set money.pricesOfAssumptions to as-they-stand.";

/** Factor for assumption prices, or the problem of years missing from the index. */
export function studyPrices(
  money: MoneyDocument,
  set: AssumptionSet,
): { prices: StudyPrices; problems: Contradiction[] } {
  if (money.pricesOfAssumptions === "as-they-stand") {
    return {
      prices: { factorOf: exchanged(money.exchangeRate), index: undefined, works: undefined },
      problems: [],
    };
  }
  const table = set.priceIndices.find(({ id }) => id === indexId);
  if (!table) throw new Error(`price-index.yaml holds no index ${indexId}`);
  const own = money.indexValues.map(({ year, value }) => [year, value] as const);
  const known = new Map([...table.values, ...own]);
  const latest = standIn(money.priceYear, known);
  const added = latest ? [[money.priceYear, latest.value] as const] : [];
  const index = { id: table.id, name: table.name, values: new Map([...known, ...added]) };
  const works = worksIndexOf(money, set, index);
  return {
    prices: {
      factorOf: converted(index, money.priceYear, money.exchangeRate, works),
      ...{ index, works, ...(latest ? { latestIndex: latest.year } : {}) },
    },
    problems: [
      ...valueProblems(money, table),
      ...yearProblems(money, index, set),
      ...ownWorksProblems(money, set),
    ],
  };
}

/** The value that stands for a price year whose own is not published yet: the last before it. */
function standIn(priceYear: number, known: ReadonlyMap<number, number>) {
  const year = priceYear - 1;
  const value = year === Math.max(...known.keys()) ? known.get(year) : undefined;
  return value === undefined ? undefined : { year, value };
}

/** The year whose index stands for the price year; undefined where that has its own, or where prices stay as they stand. */
export function indexStandsFor(
  money: MoneyDocument,
  set: Pick<AssumptionSet, "priceIndices">,
): number | undefined {
  if (money.pricesOfAssumptions === "as-they-stand") return undefined;
  const table = set.priceIndices.find(({ id }) => id === indexId);
  const own = money.indexValues.map(({ year, value }) => [year, value] as const);
  return table && standIn(money.priceYear, new Map([...table.values, ...own]))?.year;
}

/** The study's own index of works as it is, or the table's, continued by consumer prices; these where there is none. */
function worksIndexOf({ worksIndex }: MoneyDocument, set: AssumptionSet, consumer: PriceIndex): PriceIndex {
  if (worksIndex) {
    const values = new Map(worksIndex.values.map(({ year, value }) => [year, value]));
    return { id: "the study's own", name: worksIndex.name, values };
  }
  const table = set.priceIndices.find(({ id }) => id === worksId);
  return table ? continuedBy({ id: table.id, name: table.name, values: table.values }, consumer) : consumer;
}

/** Years that an own index of works lacks, or has twice. */
function ownWorksProblems({ worksIndex, priceYear }: MoneyDocument, set: AssumptionSet): Contradiction[] {
  if (!worksIndex) return [];
  const path = ["money", "worksIndex", "values"];
  const years = worksIndex.values.map(({ year }) => year);
  const needed = [...set.entries.values()].flatMap(({ index, priceYear: year }) =>
    index === "works" && year !== undefined ? [year] : [],
  );
  const lacking = [...new Set([priceYear, ...needed])].filter((year) => !years.includes(year)).sort();
  const twice = years.find((year, place) => years.indexOf(year) !== place);
  return [
    ...(lacking.length === 0
      ? []
      : [
          {
            path,
            found: `no value for ${lacking.join(", ")}`,
            allowed: `the study's price year, ${priceYear}, and those of the assumptions' works`,
            remedy: "Add these years, or leave the index out.",
          },
        ]),
    ...(twice === undefined
      ? []
      : [
          {
            path,
            found: `${twice} a second time`,
            allowed: "each year once",
            remedy: "Keep one of the two.",
          },
        ]),
  ];
}

function yearProblems({ priceYear }: MoneyDocument, index: PriceIndex, set: AssumptionSet): Contradiction[] {
  const known = `a year that the index ${index.id} holds: ${yearsText(index)}`;
  const lacksStudy = !index.values.has(priceYear);
  const lacking = [...set.entries.values()].filter(
    (entry) => isPrice(entry) && entry.priceYear !== undefined && !index.values.has(entry.priceYear),
  );
  const others = lacking.filter((entry) => entry.priceYear !== priceYear);
  return [
    ...(lacksStudy
      ? [{ path: ["money", "priceYear"], found: String(priceYear), allowed: known, remedy }]
      : []),
    ...others.map(({ id, priceYear: year }) => ({
      path: ["money", "indexValues"],
      found: `no value for ${year}, the price year of ${id}`,
      allowed: known,
      remedy,
    })),
  ];
}

/** Largest plausible change of prices from one year to the next. */
const largestYearlyChange = 1.25;

/** Index values on a different base from the table's, which would multiply prices many times over. */
function valueProblems({ indexValues }: MoneyDocument, table: PriceIndex): Contradiction[] {
  return indexValues.flatMap(({ year, value }, place) => {
    const nearest = [...table.values].sort(([a], [b]) => Math.abs(a - year) - Math.abs(b - year))[0];
    if (!nearest) return [];
    const [nearYear, near] = nearest;
    const most = largestYearlyChange ** Math.max(1, Math.abs(nearYear - year));
    return value <= near * most && value >= near / most
      ? []
      : [
          {
            path: ["money", "indexValues", place, "value"],
            found: String(value),
            allowed: `a value on the base of ${table.id} (1982-84 = 100), which has ${near} for ${nearYear}: from ${(near / most).toFixed(1)} to ${(near * most).toFixed(1)}`,
          },
        ];
  });
}
