import { beforeAll, describe, expect, it } from "vitest";
import { workbook } from "../../src/forms/workbook/workbook.js";
import { exampleRun } from "../report/runs.js";
import { exampleNames } from "../study/example.js";
import { keyOf, type LiveBook, liveBook } from "./recalculated.js";

describe.each(exampleNames)("numbers of %s", (name) => {
  let file: LiveBook;
  beforeAll(async () => {
    file = await liveBook(await workbook(exampleRun(name)));
  });

  it("are formulas, inputs, or colored as computed by the program", () => {
    expect(file.typed.length).toBeGreaterThan(100);
    expect(file.typed.filter(({ color }) => color === undefined)).toEqual([]);
  });

  it("are typed once: another cell with the same is a link", () => {
    const beside = (sheet: string) => !/^(Infestation quantities|Assumptions|The answer)/.test(sheet);
    const telling = file.typed.filter(
      ({ place, value }) =>
        beside(place.sheet) &&
        String(Number(Math.abs(value).toPrecision(12))).replace(/^0\.0*|[.0]*$/g, "").length >= 5,
    );
    expect(telling.length).toBeGreaterThan(3);
    const first = new Map(telling.toReversed().map((each) => [each.value, each]));
    const twice = telling.filter((each) => first.get(each.value) !== each);
    expect(twice.map(({ place, value, name: row }) => `${keyOf(place)} ${row}: ${value}`)).toEqual([]);
  });
});
