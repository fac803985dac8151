import { at } from "../lists.js";
import { remembered } from "./computed-once.js";
import { type Account, accountOf, type EnteredAccount } from "./money/account.js";
import { centsByBearer } from "./money/bearer.js";
import type { Money } from "./money/decimal.js";
import { centsPerUnit } from "./money/decimal.js";
import { type CostLine, moneysOf } from "./money/line.js";
import { type PriceGroup, priceGroupOf } from "./money/price-group.js";
import { kindOf } from "./structures/kinds.js";
import type { StructureResult } from "./structures/structure.js";

/** A cost by year since establishment, in constant prices, all together and by what it is. */
export interface CostStream {
  readonly byYear: readonly Money[];
  /** What is lost, whether anyone knows of the mussels or not. */
  readonly harm: readonly Money[];
  /** What is done about them: only once they are noticed. */
  readonly control: readonly Money[];
}

/** What an infestation costs by year since establishment. */
export interface YearlyCost extends CostStream {
  /** Of this, the parts whose prices rise otherwise than prices in general. */
  readonly rising: ReadonlyMap<PriceGroup, CostStream>;
}

/** What an established infestation costs by year since establishment; sums of the structures' lines. */
export interface InfestationCost extends YearlyCost {
  /** Year, counted from 0, in which one structure first loses more than a limit; lake-wide duties do not count. */
  readonly firstAgeAbove: (limit: number) => number | undefined;
  /** One structure's part of it; made when asked for. */
  readonly ofStructure: (id: string) => YearlyCost;
  /** Made when asked for. */
  readonly byBearer: ReadonlyArray<YearlyCost & { readonly id: string }>;
  /** Amounts that staff entered, by account; the other losses, which are not infrastructure, are in no other sum. */
  readonly byAccount: ReadonlyMap<EnteredAccount, YearlyCost>;
}

/** Losses are harm, of the structures or others; work, its outages, duties and protection are control. */
export const isControl = ({ type }: Pick<CostLine, "type">) => type !== "loss" && type !== "apart";

/**
 * @param skipYears years of infestation that lie before the study's first year
 * @param risingGroups groups of costs that are kept apart, since their prices rise otherwise than prices in general
 */
export function infestationCost(
  structures: readonly StructureResult[],
  skipYears: number,
  risingGroups: ReadonlySet<PriceGroup> = new Set(),
): InfestationCost {
  const horizon = Math.max(0, ...structures.map(({ years }) => years.length - skipYears));
  const noCents = (): CentsByYear => ({
    harm: new Float64Array(horizon),
    control: new Float64Array(horizon),
    rising: new Map(),
  });
  const all = noCents();
  const byAccount = new Map<EnteredAccount, CentsByYear>();
  const byStructure = new Map<string, CentsByYear>();
  const byBearer = new Map<string, CentsByYear>();
  let bearers: InfestationCost["byBearer"] | undefined;
  for (const { structure, years } of structures) {
    const ofStructure = streamOf(byStructure, structure.id, noCents);
    const streamsOf = ({ id, account }: YearSum): CentsByYear[] => {
      const ofAccount = account === "damage" ? [] : [streamOf(byAccount, account, noCents)];
      const ofStructures = account === "other" ? [] : [all, ofStructure, streamOf(byBearer, id, noCents)];
      return [...ofAccount, ...ofStructures];
    };
    const sumsOf = remembered((lines: readonly CostLine[]) =>
      yearSums(lines, risingGroups).map((sum) => ({ sum, streams: streamsOf(sum) })),
    );
    for (let year = 0; year < years.length - skipYears; year++) {
      for (const { sum, streams } of sumsOf(at(years, year + skipYears))) {
        for (const stream of streams) addSum(stream, year, sum, noCents);
      }
    }
  }
  return {
    ...moneys(all),
    firstAgeAbove: (limit) => {
      const ages = structures
        .filter(({ structure }) => kindOf(structure).isBuilt)
        .map(({ structure }) => ageAbove(limit, byStructure.get(structure.id) ?? noCents()))
        .filter((age) => age >= 0);
      return ages.length === 0 ? undefined : Math.min(...ages);
    },
    ofStructure: (id) => moneys(byStructure.get(id) ?? noCents()),
    get byBearer() {
      bearers ??= [...byBearer].map(([id, cents]) => ({ id, ...moneys(cents) }));
      return bearers;
    },
    byAccount: new Map([...byAccount].map(([account, cents]) => [account, moneys(cents)])),
  };
}

/** Lines of one year that count alike, added up; years that repeat have the same list of lines, which is added up once. */
interface YearSum {
  readonly id: string;
  readonly part: "harm" | "control";
  readonly group: PriceGroup | undefined;
  readonly account: Account;
  cents: number;
}

function yearSums(lines: readonly CostLine[], rising: ReadonlySet<PriceGroup>): YearSum[] {
  const sums: YearSum[] = [];
  for (const line of lines) {
    const account = accountOf(line);
    const part = isControl(line) ? "control" : "harm";
    const group = risingGroup(line, rising);
    for (const [id, cents] of centsByBearer(line.bearer, line.cents)) {
      const same = sums.find(
        (sum) => sum.id === id && sum.part === part && sum.group === group && sum.account === account,
      );
      if (same) same.cents += cents;
      else sums.push({ id, part, group, account, cents });
    }
  }
  return sums;
}

interface CentsByYear {
  readonly harm: Float64Array;
  readonly control: Float64Array;
  readonly rising: Map<PriceGroup, CentsByYear>;
}

function risingGroup(line: CostLine, rising: ReadonlySet<PriceGroup>): PriceGroup | undefined {
  if (rising.size === 0) return undefined;
  const group = priceGroupOf(line);
  return rising.has(group) ? group : undefined;
}

function streamOf<Key>(streams: Map<Key, CentsByYear>, id: Key, empty: () => CentsByYear): CentsByYear {
  const known = streams.get(id);
  if (known) return known;
  const stream = empty();
  streams.set(id, stream);
  return stream;
}

const ageAbove = (limit: number, { harm }: CentsByYear) =>
  harm.findIndex((cents) => cents > limit * centsPerUnit);

function addSum(
  stream: CentsByYear,
  year: number,
  { part, group, cents }: YearSum,
  noCents: () => CentsByYear,
): void {
  add(stream[part], year, cents);
  if (group !== undefined) add(streamOf(stream.rising, group, noCents)[part], year, cents);
}

function add(stream: Float64Array, year: number, cents: number): void {
  stream[year] = (stream[year] ?? 0) + cents;
}

/** Lists are made when asked for: most of the many streams are never read. */
function moneys({ harm, control, rising }: CentsByYear): YearlyCost {
  const made: { byYear?: readonly Money[]; harm?: readonly Money[]; control?: readonly Money[] } = {};
  return {
    rising: new Map([...rising].map(([group, cents]) => [group, moneys(cents)])),
    get byYear() {
      made.byYear ??= moneysOf(Array.from(harm, (cents, year) => cents + (control[year] ?? 0)));
      return made.byYear;
    },
    get harm() {
      made.harm ??= moneysOf([...harm]);
      return made.harm;
    },
    get control() {
      made.control ??= moneysOf([...control]);
      return made.control;
    },
  };
}
