import { noElement } from "../lists.js";
import { remembered, withLater } from "./computed-once.js";
import {
  type CentsByYear,
  moneyIn,
  noCents,
  plainOf,
  risingOf,
  Stream,
  type YearlyCost,
} from "./cost-streams.js";
import { type Account, accountOf, accounts, type EnteredAccount } from "./money/account.js";
import { centsByBearer } from "./money/bearer.js";
import { centsPerUnit } from "./money/decimal.js";
import { AmountError, type CostLine, roundedCents } from "./money/line.js";
import { type PriceGroup, priceGroupOf } from "./money/price-group.js";
import type { Charge } from "./structures/component.js";
import { kindOf } from "./structures/kinds.js";
import { endOf, firstOf } from "./structures/plans/year-table.js";
import type { StructureResult } from "./structures/structure.js";
import { nameOf, type Origin } from "./structures/structure-years.js";

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
  const rows = rowsOf(structures, skipYears, [...risingGroups]);
  const all = centsOf(infrastructure, rows);
  const cost = {
    plain: plainOf(all),
    rising: risingOf(all),
    firstAgeAbove: (limit: number) => {
      const age = rows.mostHarm.findIndex((cents) => cents > limit * centsPerUnit);
      return age < 0 ? undefined : age;
    },
    ofStructure: (id: string) => {
      const own = structures.filter(({ structure }) => structure.id === id);
      return infestationCost(own, skipYears, risingGroups);
    },
    byAccount: new Map([...rows.entered].map((account) => [account, new Stream(centsOf([account], rows))])),
  };
  return withLater(cost, {
    ...moneyIn(all),
    byBearer: () => byBearer(structures, skipYears, risingGroups),
  });
}

const infrastructure = accounts.filter((account) => account !== "other");

/** Cents by year: whole numbers, which add up exactly in any order. */
interface Rows {
  readonly horizon: number;
  readonly rising: readonly PriceGroup[];
  /** Rows of harm and of control for each account and group of prices: see `rowOf`. */
  readonly cents: Float64Array;
  readonly entered: Set<EnteredAccount>;
  /** The most that one structure loses in each year. */
  readonly mostHarm: Float64Array;
  /** What the structure that is added loses in each year. */
  readonly lost: Float64Array;
}

/** Row of harm, which that of control follows. @param group 0 for prices that rise as all do, else its place among the others */
const rowOf = (account: Account, group: number, rising: readonly PriceGroup[]) =>
  (accounts.indexOf(account) * (rising.length + 1) + group) * 2;

function rowsOf(
  structures: readonly StructureResult[],
  skipYears: number,
  rising: readonly PriceGroup[],
): Rows {
  const horizon = horizonOf(structures, skipYears);
  const cents = new Float64Array(accounts.length * (rising.length + 1) * 2 * horizon);
  const mostHarm = new Float64Array(horizon);
  const lost = new Float64Array(horizon);
  const rows = { horizon, rising, cents, entered: new Set<EnteredAccount>(), mostHarm, lost };
  for (const { structure, told } of structures) {
    lost.fill(0);
    for (const origin of told.origins) addOrigin(rows, origin, skipYears, structure.id);
    if (kindOf(structure).isBuilt)
      for (let year = 0; year < horizon; year++)
        mostHarm[year] = Math.max(mostHarm[year] ?? 0, lost[year] ?? 0);
  }
  return rows;
}

const horizonOf = (structures: readonly StructureResult[], skipYears: number) =>
  Math.max(0, ...structures.map(({ told }) => told.count - skipYears));

/**
 * Lists that stand in some years in a row are added together, each line rounded to the cent once, as `costLine` does; years
 * before the study are judged and not added.
 * @throws AmountError naming structure and line where one is no sum of money, in whatever year
 */
function addOrigin(rows: Rows, { part, table }: Origin, skipYears: number, structure: string): void {
  const { lists, charges, quantities, unitRates } = table;
  for (let first = 0, end = 0; first < lists.length; first = end) {
    const list = lists[first] ?? noElement(lists, first);
    for (end = first + 1; lists[end] === list; ) end++;
    for (let line = firstOf(table, list); line < endOf(table, list); line++) {
      const charge = charges[line] ?? noElement(charges, line);
      const quantity = quantities[line] ?? noElement(quantities, line);
      const unitRate = unitRates[line] ?? noElement(unitRates, line);
      const cents = roundedCents(quantity, unitRate);
      if (!Number.isSafeInteger(cents))
        throw new AmountError(structure, nameOf(part, charge.what), quantity * unitRate);
      if (end > skipYears) addCharge(rows, charge, cents, Math.max(0, first - skipYears), end - skipYears);
    }
  }
}

function addCharge(
  { horizon, rising, cents, entered, lost }: Rows,
  charge: Charge,
  amount: number,
  first: number,
  end: number,
): void {
  const account = accountOf(charge);
  if (account !== "damage") entered.add(account);
  const group = rising.length === 0 ? 0 : rising.indexOf(priceGroupOf(charge)) + 1;
  const row = (rowOf(account, group, rising) + Number(isControl(charge))) * horizon;
  for (let place = row + first; place < row + end; place++) cents[place] = (cents[place] ?? 0) + amount;
  if (account === "other" || isControl(charge)) return;
  for (let year = first; year < end; year++) lost[year] = (lost[year] ?? 0) + amount;
}

/** All that stands in the rows of some accounts. */
function centsOf(of: readonly Account[], { horizon, rising, cents }: Rows): CentsByYear {
  const all = noCents(horizon);
  for (const account of of) {
    for (let group = 0; group <= rising.length; group++) {
      const place = rowOf(account, group, rising) * horizon;
      const own = rising[group - 1];
      for (const stream of own === undefined ? [all] : [all, streamOf(all.rising, own, horizon)]) {
        addRow(stream.harm, cents, place);
        addRow(stream.control, cents, place + horizon);
      }
    }
  }
  return all;
}

function addRow(sums: number[], cents: Float64Array, place: number): void {
  for (let year = 0; year < sums.length; year++) sums[year] = (sums[year] ?? 0) + (cents[place + year] ?? 0);
}

/** What each bearer pays of the lines that are infrastructure; a line that stands in many years is split once. */
function byBearer(
  structures: readonly StructureResult[],
  skipYears: number,
  risingGroups: ReadonlySet<PriceGroup>,
): InfestationCost["byBearer"] {
  const horizon = horizonOf(structures, skipYears);
  const streams = new Map<string, CentsByYear>();
  const partsOf = remembered((line: CostLine) => centsByBearer(line.bearer, line.cents));
  for (const { years } of structures) {
    years.slice(skipYears).forEach((lines, year) => {
      for (const line of lines) {
        if (accountOf(line) === "other") continue;
        const group = risingGroup(line, risingGroups);
        for (const [id, cents] of partsOf(line))
          addCents(streamOf(streams, id, horizon), year, { type: line.type, cents }, group);
      }
    });
  }
  return [...streams].map(([id, cents]) =>
    withLater({ id, plain: plainOf(cents), rising: risingOf(cents) }, moneyIn(cents)),
  );
}

function risingGroup(line: CostLine, rising: ReadonlySet<PriceGroup>): PriceGroup | undefined {
  if (rising.size === 0) return undefined;
  const group = priceGroupOf(line);
  return rising.has(group) ? group : undefined;
}

function streamOf<Key>(streams: Map<Key, CentsByYear>, id: Key, horizon: number): CentsByYear {
  const known = streams.get(id);
  if (known) return known;
  const stream = noCents(horizon);
  streams.set(id, stream);
  return stream;
}

function addCents(
  stream: CentsByYear,
  year: number,
  line: Pick<CostLine, "type" | "cents">,
  group: PriceGroup | undefined,
): void {
  const part = isControl(line) ? stream.control : stream.harm;
  part[year] = (part[year] ?? 0) + line.cents;
  if (group !== undefined) addCents(streamOf(stream.rising, group, part.length), year, line, undefined);
}
