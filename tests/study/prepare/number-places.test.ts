import { describe, expect, it } from "vitest";
import { placesOf, withNumbers } from "../../../src/study/prepare/number-places.js";

const months = (value: number) => Array.from({ length: 12 }, () => value);
const model = {
  docks: [{ name: "north", area: 12 }, { name: "south" }],
  launches: months(5),
  air: months(9),
  money: { rate: 3 },
};
const quantityAt = (path: readonly PropertyKey[], value: number) => ({ path, quantity: { value } });

describe("numbers in their places", () => {
  const places = placesOf(model, [
    quantityAt(["docks", 0, "area"], 12),
    quantityAt(["launches", "mar"], 5),
    quantityAt(["air", "all"], 9),
  ]);

  it("stand under the path of their quantity, months by their place in the year", () => {
    const changed = withNumbers(model, places, [1, 2, 3]);
    expect(changed).toEqual({
      ...model,
      docks: [{ name: "north", area: 1 }, { name: "south" }],
      launches: [5, 5, 2, 5, 5, 5, 5, 5, 5, 5, 5, 5],
      air: months(3),
    });
  });

  it("leave the group itself as it is, and share what holds none of them", () => {
    const before = structuredClone(model);
    const changed = withNumbers(model, places, [1, 2, 3]);
    expect(model).toEqual(before);
    expect(changed.money).toBe(model.money);
    expect(changed.docks[1]).toBe(model.docks[1]);
    expect(changed.docks[0]).not.toBe(model.docks[0]);
  });

  it("are refused where another number stands, or none", () => {
    const refused = (path: readonly PropertyKey[]) => expect(() => placesOf(model, [quantityAt(path, 4)]));
    refused(["money", "rate"]).toThrow("money/rate: no 4 there, but 3");
    refused(["money", "share"]).toThrow("money/share: no 4 there, but undefined");
    refused(["docks", 2, "area"]).toThrow("docks/2/area: no 4 there, but undefined");
    refused(["launches", "march"]).toThrow("launches/march: no 4 there, but undefined");
  });
});
