import { at, meanOf, sumOf } from "../lists.js";
import type { MoneySettings, StudyInput } from "./inputs.js";
import { months } from "./lake/calendar.js";
import type { Lake } from "./lake/lake.js";
import { storageBetween } from "./lake/storage.js";
import { type CostLine, costLine } from "./money/line.js";
import type { Contexts } from "./structures/context.js";
import { kindOf, type Structure } from "./structures/kinds.js";
import type { ServiceItem } from "./structures/structure-kind.js";

/**
 * Storage given up, m³: the largest difference on any day d of the mean year, W = max(0, V(z(d)) − V(y(d))), of own
 * levels z and other levels y; the trapezoid rule between the table's rows.
 */
export function storageLost(
  own: readonly number[],
  other: readonly number[],
  { storageTable }: Lake,
): number {
  let most = 0;
  own.forEach((level, day) => {
    most = Math.max(most, storageBetween(storageTable, at(other, day), level));
  });
  return most;
}

/**
 * What following other levels costs in a year against the lake's own, mussels apart: O = Σ p (y − x) + w W. Flows through plants and intakes
 * stay as they are; what is released earlier is not credited.
 */
export function operatingLines(
  own: Contexts,
  other: Contexts,
  storageGivenUp: number,
  { structures, lake, money }: StudyInput,
): CostLine[] {
  const lines = structures.flatMap((structure) => {
    const before = meanService(structure, own);
    const after = meanService(structure, other);
    return after.map((item, index) => {
      const { quantity, cost } = difference(at(before, index), item);
      return costLine({
        structure: structure.id,
        what: `${structure.name}: ${item.what}`,
        type: cost < 0 ? "revenue" : "program",
        bearer: structure.bearer,
        quantity,
        quantityKind: item.quantityKind,
        unitRate: quantity === 0 ? 0 : cost / quantity,
        assumptionIds: [],
      });
    });
  });
  return [...lines, storageLine(storageGivenUp, lake, money)].filter(({ cents }) => cents !== 0);
}

function storageLine(storageGivenUp: number, lake: Lake, money: MoneySettings): CostLine {
  return costLine({
    structure: "lake",
    what: "storage given up",
    type: "program",
    bearer: money.programBearer,
    quantity: storageGivenUp,
    quantityKind: "volume",
    unitRate: lake.storageValue,
    assumptionIds: [],
  });
}

function meanService(structure: Structure, contexts: Contexts): readonly ServiceItem[] {
  const { cleanService } = kindOf(structure);
  if (!cleanService) return [];
  const years = contexts.map((context) => cleanService(structure, context));
  const [first = [], ...others] = years;
  if (others.length === 0) return first;
  return first.map((item, index) => ({
    ...item,
    quantity: months.map((month) => meanOf(years.map((items) => at(at(items, index).quantity, month)))),
  }));
}

function difference(before: ServiceItem, after: ServiceItem): { quantity: number; cost: number } {
  const more = months.map((month) => at(after.quantity, month) - at(before.quantity, month));
  return {
    quantity: sumOf(more),
    cost: sumOf(more.map((quantity, month) => quantity * at(after.unitRate, month))),
  };
}
