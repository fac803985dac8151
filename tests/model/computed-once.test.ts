import { describe, expect, it } from "vitest";
import { withLater } from "../../src/model/computed-once.js";

describe("properties made when asked for", () => {
  it("are made by the first reading alone, each for its own object", () => {
    const made: string[] = [];
    const named = (name: string) =>
      withLater(
        { name },
        {
          long: () => {
            made.push(name);
            return `${name}${name}`;
          },
          nothing: () => {
            made.push("nothing");
            return undefined;
          },
        },
      );
    const [one, other] = [named("a"), named("b")];
    expect(made).toEqual([]);
    expect([one.long, one.long, other.long, other.nothing, other.nothing]).toEqual([
      "aa",
      "aa",
      "bb",
      undefined,
      undefined,
    ]);
    expect(made).toEqual(["a", "b", "nothing"]);
  });

  it("are copied and written with the others", () => {
    const sized = withLater({ width: 2 }, { area: () => 4 });
    expect({ ...sized, width: 3 }).toEqual({ width: 3, area: 4 });
    expect(JSON.stringify(sized)).toBe('{"width":2,"area":4}');
    expect(() => Object.assign(sized, { area: 5 })).toThrow(TypeError);
  });
});
