import { describe, expect, it } from "vitest";
import type { AssumptionId } from "../../../../src/model/register/register.js";
import type { Charge, YearTable } from "../../../../src/model/structures/component.js";
import {
  endOf,
  firstAlike,
  firstOf,
  linesByYear,
  MergedLists,
} from "../../../../src/model/structures/plans/year-table.js";

const charge = (what: string, assumptionIds: readonly AssumptionId[], unitRate = 1): Charge => ({
  what,
  type: "work",
  quantityKind: "hours",
  unitRate,
  assumptionIds,
});
const fees: readonly AssumptionId[] = ["disposal.tipping-fee"];
const haulage: readonly AssumptionId[] = ["disposal.haulage"];
const rackWork: readonly AssumptionId[] = ["cleaning.rack.base"];

/** A table of lists, each told charge by charge. */
function tableOf(...lists: ReadonlyArray<ReadonlyArray<readonly [Charge, number]>>): YearTable {
  const merged = new MergedLists();
  const numbers = lists.map((told) => {
    for (const [each, quantity] of told) merged.tell(each, quantity);
    return merged.endList();
  });
  return merged.table(numbers);
}

describe("lists that are told one after the other, by hand", () => {
  const [crew, boat] = [charge("crew", fees, 30), charge("boat", haulage, 100)];
  const table = tableOf(
    [
      [crew, 2],
      [boat, 1],
      [crew, 3],
    ],
    [],
    [
      [boat, 4],
      [{ ...crew, unitRate: 60 }, 1],
      [crew, 1],
    ],
  );

  it("stand one behind the other, an empty one too", () => {
    expect(table.lists).toEqual([0, 1, 2]);
    expect([0, 1, 2].map((list) => [firstOf(table, list), endOf(table, list)])).toEqual([
      [0, 2],
      [2, 2],
      [2, 4],
    ]);
  });

  it("add up what is told again in the same list, and in no other", () => {
    const told = linesByYear(table).map((lines) =>
      lines.map(({ what, quantity, unitRate }) => [what, quantity, unitRate]),
    );
    // Hours at 60 and at 30 are two at 45.
    expect(told).toEqual([
      [
        ["crew", 5, 30],
        ["boat", 1, 100],
      ],
      [],
      [
        ["boat", 4, 100],
        ["crew", 2, 45],
      ],
    ]);
  });

  it("share what charges of one name, type and kind are told as, and not those that differ in one of them", () => {
    const others = [{ ...crew, type: "loss" } as const, { ...crew, quantityKind: "visits" } as const];
    const { charges } = tableOf(
      [[crew, 1]],
      [[{ ...crew }, 1]],
      ...others.map((each) => [[each, 1] as const]),
    );
    expect(charges[1]).toBe(charges[0]);
    expect(charges.map(({ type, quantityKind }) => [type, quantityKind])).toEqual([
      ["work", "hours"],
      ["work", "hours"],
      ["loss", "hours"],
      ["work", "visits"],
    ]);
  });
});

describe("the assumptions of a line that is told by two charges", () => {
  const [one, other, third] = [
    charge("disposal", fees),
    charge("disposal", haulage),
    charge("disposal", rackWork),
  ];

  it("are one list for all lists that join the same two, and another for another two", () => {
    const joined = [
      [one, 1],
      [other, 1],
    ] as const;
    const { assumptionIds } = tableOf(
      joined,
      joined,
      [
        [one, 1],
        [third, 1],
      ],
      [
        [other, 1],
        [one, 1],
      ],
      [
        [third, 1],
        [other, 1],
      ],
    );
    expect(assumptionIds[1]).toBe(assumptionIds[0]);
    expect(assumptionIds).toEqual([
      [...fees, ...haulage],
      [...fees, ...haulage],
      [...fees, ...rackWork],
      [...haulage, ...fees],
      [...rackWork, ...haulage],
    ]);
  });
});

describe("the assumptions of a line whose charges have some in common", () => {
  it("are those of both, each once", () => {
    const both = charge("disposal", [...fees, ...haulage]);
    const merged = ([first, second]: readonly [Charge, Charge]) =>
      tableOf([
        [first, 1],
        [second, 1],
      ]).assumptionIds[0];
    expect(merged([charge("disposal", fees), both])).toEqual([...fees, ...haulage]);
    expect(merged([charge("disposal", fees), charge("disposal", [...fees, ...rackWork])])).toEqual([
      ...fees,
      ...rackWork,
    ]);
    expect(merged([both, charge("disposal", haulage)])).toBe(both.assumptionIds);
  });
});

describe("years that are alike in each of several tables", () => {
  const of = (...lists: number[]) => ({ lists }) as unknown as YearTable;

  it("are told by the first of them, by hand", () => {
    expect(firstAlike([of(0, 0, 1, 0, 1), of(0, 1, 1, 0, 1)], 5)).toEqual([0, 1, 2, 0, 2]);
    expect(firstAlike([of(3, 3, 3)], 3)).toEqual([0, 0, 0]);
  });
});
