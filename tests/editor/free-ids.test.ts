import { expect, it } from "vitest";
import { freeId, freeIds } from "../../src/editor/actions.js";

// Worked out by hand: the number is that of the place in the list, or the next that is not taken.
it("ids of items that are added are counted from their places and leave out those taken", () => {
  const present = [{ id: "dock-2" }, { id: "dock-5" }, "no group"];
  const next = freeIds("dock", present);
  expect([next(), next(), next()]).toEqual(["dock-4", "dock-6", "dock-7"]);
});

it("each id is the one that is given where all before it are present", () => {
  const items: { id: string }[] = [{ id: "dock-3" }, { id: "dock-7" }];
  const next = freeIds("dock", items);
  for (let added = 0; added < 9; added += 1) {
    const id = next();
    expect(id).toBe(freeId("dock", items));
    items.push({ id });
  }
});
