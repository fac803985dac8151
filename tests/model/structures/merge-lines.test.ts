import { describe, expect, it } from "vitest";
import type { RegisteredId } from "../../../src/model/register/register.js";
import type { Priced } from "../../../src/model/structures/component.js";
import { linesByYear, tableOf } from "../../../src/model/structures/plans/year-table.js";
import { mergedLines } from "./kept.js";

const line = (
  what: string,
  quantity: number,
  unitRate: number,
  assumptionIds: readonly RegisteredId[],
): Priced => ({
  what,
  type: "work",
  quantity,
  quantityKind: "mass",
  unitRate,
  assumptionIds,
});

describe("lines of one name", () => {
  const fees: RegisteredId[] = ["disposal.tipping-fee", "disposal.haulage"];

  it("are one line: quantities and costs in sum, and the assumptions of all of them, each once", () => {
    // By hand: 30 kg of 200 and 10 kg of 400 are 40 kg of 10,000 in all, 250 each.
    expect(
      mergedLines([
        line("disposal", 30, 200, fees),
        line("cleaning", 1, 5, ["cleaning.rack.base"]),
        line("disposal", 10, 400, ["shell.shell-share", "disposal.tipping-fee"]),
      ]),
    ).toEqual([
      line("disposal", 40, 250, [...fees, "shell.shell-share"]),
      line("cleaning", 1, 5, ["cleaning.rack.base"]),
    ]);
  });

  it("keep their assumptions where the others name no more", () => {
    const [merged] = mergedLines([
      line("disposal", 30, 200, fees),
      line("disposal", 5, 200, fees),
      line("disposal", 5, 200, ["disposal.tipping-fee"]),
    ]);
    expect(merged?.assumptionIds).toEqual(fees);
    expect(merged?.quantity).toBe(40);
  });

  it("are none where there is nothing of them", () => {
    expect(mergedLines([line("disposal", 0, 200, fees)])).toEqual([]);
  });
});

describe("a table of lists", () => {
  it("gives each back as it stood, also lines of one name that are of another type, kind or price", () => {
    const fee = line("disposal", 30, 200, ["disposal.tipping-fee"]);
    const lists: readonly (readonly Priced[])[] = [
      [fee, { ...fee, type: "loss" }],
      [
        { ...fee, type: "loss" },
        { ...fee, quantityKind: "hours" },
        { ...fee, unitRate: 210 },
      ],
      [],
      [{ ...fee, what: "haulage" }, fee],
    ];
    expect(linesByYear(tableOf(lists))).toEqual(lists);
  });
});
